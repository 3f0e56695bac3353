package darkrim.present.table;

import darkrim.present.ConditionWords;
import darkrim.present.EvidenceWords;
import darkrim.present.LayoutWords;
import darkrim.present.Printable;
import darkrim.study.CheckResult;
import darkrim.verdict.Outcome;
import darkrim.verdict.RequirementResult;
import darkrim.verdict.Verdict;
import java.io.StringWriter;
import java.util.List;
import java.util.Locale;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;

/**
 * The requirements of a check as the report of tests that build servers read (the XML that Ant's junit task began): a test suite for the layout, a test case
 * for each requirement. One that fails is a failure; one that is not decided is an error, for a build must not pass on it. The library escapes every text.
 */
public final class JunitReport {
    /** Surfaces told of a requirement at most. */
    private static final int MOST = 20;

    private JunitReport() {}

    /** The report. */
    public static String of(CheckResult result, String version) {
        StringWriter text = new StringWriter();
        try {
            XMLStreamWriter xml = XMLOutputFactory.newDefaultFactory().createXMLStreamWriter(text);
            write(xml, result, version);
            xml.close();
        } catch (XMLStreamException impossible) {
            throw new IllegalStateException("writing to memory failed", impossible);
        }
        return text.toString();
    }

    private static void write(XMLStreamWriter xml, CheckResult result, String version) throws XMLStreamException {
        List<RequirementResult> all = result.judgement().requirements();
        String suite = LayoutWords.title(result.layout());
        xml.writeStartDocument("UTF-8", "1.0");
        xml.writeCharacters("\n");
        open(
                xml,
                "testsuite",
                "name",
                suite,
                "tests",
                String.valueOf(Math.max(1, all.size())),
                "failures",
                String.valueOf(count(all, Verdict.FAIL)),
                "errors",
                String.valueOf(count(all, Verdict.UNDECIDED) + (all.isEmpty() ? 1 : 0)),
                "skipped",
                "0",
                "time",
                String.format(Locale.ROOT, "%.3f", result.timing().whole()));
        xml.writeStartElement("properties");
        property(xml, "program", "Darkrim " + version);
        property(xml, "layout", result.layout().source().name());
        property(xml, "sha256", result.layout().source().sha256());
        property(xml, "seed", String.valueOf(result.effort().seed()));
        property(xml, "confidence", String.valueOf(result.effort().confidence()));
        xml.writeEndElement();
        xml.writeCharacters("\n");
        for (RequirementResult requirement : all) {
            test(xml, suite, requirement, result.effort().confidence());
        }
        if (all.isEmpty()) {
            open(xml, "testcase", "classname", suite, "name", "requirements", "time", "0");
            told(xml, "error", "undecided", "the layout asks for nothing", List.of());
            close(xml);
        }
        close(xml);
        xml.writeEndDocument();
    }

    private static void test(XMLStreamWriter xml, String suite, RequirementResult result, double confidence)
            throws XMLStreamException {
        String limit = ConditionWords.brief(result.requirement().condition());
        open(xml, "testcase", "classname", suite, "name", result.requirement().name(), "time", "0");
        if (result.verdict() != Verdict.PASS) {
            List<String> lines = result.worstFirst().stream()
                    .filter(outcome -> outcome.verdict() != Verdict.PASS)
                    .map(outcome -> outcome.verdict() + " " + line(outcome, confidence))
                    .toList();
            boolean fails = result.verdict() == Verdict.FAIL;
            long wrong = result.outcomes().stream()
                    .filter(outcome -> outcome.verdict() == result.verdict())
                    .count();
            String message =
                    wrong + " of " + result.outcomes().size() + (fails ? " fail: " : " are not decided: ") + limit;
            told(xml, fails ? "failure" : "error", fails ? "fail" : "undecided", message, lines);
        }
        xml.writeStartElement("system-out");
        xml.writeCharacters(Printable.of(result.requirement().surfaces() + ": " + limit));
        if (!result.outcomes().isEmpty()) {
            xml.writeCharacters("\n" + Printable.of(line(result.worst(), confidence)));
        }
        xml.writeEndElement();
        close(xml);
    }

    private static String line(Outcome outcome, double confidence) {
        return outcome.where() + ": " + EvidenceWords.of(outcome, confidence);
    }

    private static void told(XMLStreamWriter xml, String element, String type, String message, List<String> lines)
            throws XMLStreamException {
        xml.writeStartElement(element);
        xml.writeAttribute("type", type);
        xml.writeAttribute("message", Printable.of(message));
        for (String line : lines.subList(0, Math.min(MOST, lines.size()))) {
            xml.writeCharacters(Printable.of(line) + "\n");
        }
        if (lines.size() > MOST) {
            xml.writeCharacters("and " + (lines.size() - MOST) + " more\n");
        }
        xml.writeEndElement();
        xml.writeCharacters("\n");
    }

    private static long count(List<RequirementResult> all, Verdict verdict) {
        return all.stream().filter(each -> each.verdict() == verdict).count();
    }

    private static void property(XMLStreamWriter xml, String name, String value) throws XMLStreamException {
        xml.writeEmptyElement("property");
        xml.writeAttribute("name", name);
        xml.writeAttribute("value", Printable.of(value));
    }

    private static void open(XMLStreamWriter xml, String name, String... pairs) throws XMLStreamException {
        xml.writeStartElement(name);
        for (int i = 0; i < pairs.length; i += 2) {
            xml.writeAttribute(pairs[i], Printable.of(pairs[i + 1]));
        }
        xml.writeCharacters("\n");
    }

    private static void close(XMLStreamWriter xml) throws XMLStreamException {
        xml.writeEndElement();
        xml.writeCharacters("\n");
    }
}
