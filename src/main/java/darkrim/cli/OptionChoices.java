package darkrim.cli;

import java.util.List;

/** A command of which some options say the same in two ways, so that one of them must be given. */
interface OptionChoices {
    /** Of each choice the options with their values as the help shows them, such as {@code --depth T}. */
    List<List<String>> choices();
}
