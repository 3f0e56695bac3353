package darkrim.present;

import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Document;

/** Makes empty documents for drawings. */
final class SvgDocument {
    private static final String NAMESPACE = "http://www.w3.org/2000/svg";

    private SvgDocument() {}

    static Document empty() {
        try {
            return DocumentBuilderFactory.newDefaultInstance()
                    .newDocumentBuilder()
                    .getDOMImplementation()
                    .createDocument(NAMESPACE, "svg", null);
        } catch (ParserConfigurationException impossible) {
            throw new IllegalStateException("every Java platform has a document builder", impossible);
        }
    }
}
