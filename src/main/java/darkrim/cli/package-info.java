/**
 * The commands. Thin: options in, text out, exit codes; no physics.
 *
 * <p>In: words of a command line. Out: text, files that appear whole or not at all, an exit code. Main types:
 * {@code Commands} lists all commands, {@code Main} runs one, {@code CheckCommand} is the pattern to follow,
 * {@code OutputFile} writes, {@code ExitCode} names the codes.
 *
 * <p>It must not know: physics: whatever is computed here is at the wrong place. Begin to read: {@code
 * CheckCommand}.
 */
package darkrim.cli;
