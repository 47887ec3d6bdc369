package org.stepwell.platform.pdf;

import com.openhtmltopdf.extend.FSSupplier;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Objects;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/**
 * An XHTML document under construction. Texts are added as text nodes, so nothing an adult typed can become markup. The
 * PDF is tagged (PDF/UA-1 as far as the library goes), has a title, a language and its own font, and reaches for nothing
 * outside.
 */
public final class PdfDocument {
    /** Sheet sizes. */
    public enum Paper {
        /** 8.5 by 11 inches. */
        LETTER("8.5in 11in"),
        /** 210 by 297 millimetres. */
        A4("210mm 297mm");

        private final String size;

        Paper(String size) {
            this.size = size;
        }
    }

    private static final String FONT = "/org/apache/pdfbox/resources/ttf/LiberationSans-Regular.ttf";
    private static final String NO_ADDRESS = "stepwell:page";

    private final Document document;
    private final Element body;
    private final String title;

    /**
     * An empty document.
     *
     * @param title shown by readers as the document's name
     * @param language code such as {@code en}
     * @param style rules of CSS 2.1 with paged media; the font is {@code Page}
     */
    public PdfDocument(String title, String language, Paper paper, String style) {
        try {
            this.document = DocumentBuilderFactory.newInstance().newDocumentBuilder().newDocument();
        } catch (ParserConfigurationException e) {
            throw new IllegalStateException("the Java platform has no XML parser", e);
        }
        this.title = title;
        Element html = document.createElement("html");
        html.setAttribute("lang", language);
        document.appendChild(html);
        Element head = child(html, "head");
        child(head, "title").setTextContent(title);
        meta(head, "subject", title);
        meta(head, "description", title);
        child(head, "style").setTextContent("@page { size: " + paper.size + "; margin: 18mm 18mm 16mm 18mm } "
                + "body { font-family: 'Page'; color: #1b1b1b; margin: 0 } " + style);
        this.body = child(html, "body");
    }

    private void meta(Element head, String name, String content) {
        Element meta = child(head, "meta");
        meta.setAttribute("name", name);
        meta.setAttribute("content", content);
    }

    private Element child(Element parent, String tag) {
        Element made = document.createElement(tag);
        parent.appendChild(made);
        return made;
    }

    /** The outermost element to put things in. */
    public Element body() {
        return body;
    }

    /** Adds an element with a text; the class may be empty. */
    public Element add(Element parent, String tag, String cssClass, String text) {
        Element made = child(parent, tag);
        if (!cssClass.isEmpty()) {
            made.setAttribute("class", cssClass);
        }
        if (!text.isEmpty()) {
            made.appendChild(document.createTextNode(printable(text)));
        }
        return made;
    }

    /** Letters that XML cannot hold are left out; they have no shape on paper. */
    private static String printable(String text) {
        return text.codePoints().filter(c -> c >= 0x20 || c == '\n' || c == '\t').filter(c -> c < 0xD800 || c > 0xDFFF)
                .filter(c -> c != 0xFFFE && c != 0xFFFF)
                .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append).toString();
    }

    /**
     * The PDF.
     *
     * @throws UncheckedIOException when it cannot be made
     */
    public byte[] render() {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        PdfRendererBuilder builder = new PdfRendererBuilder();
        builder.useFastMode();
        builder.usePdfUaAccessibility(true);
        FSSupplier<InputStream> font = () -> Objects.requireNonNull(PdfDocument.class.getResourceAsStream(FONT));
        builder.useFont(font, "Page", 400, BaseRendererBuilder.FontStyle.NORMAL, true);
        builder.useUriResolver((base, uri) -> null);
        builder.withProducer("Stepwell");
        builder.withW3cDocument(document, NO_ADDRESS);
        builder.toStream(out);
        try {
            builder.run();
        } catch (IOException e) {
            throw new UncheckedIOException("the PDF of \"" + title + "\" could not be made", e);
        }
        return out.toByteArray();
    }
}
