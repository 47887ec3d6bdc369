package org.stepwell.platform.pdf;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.multipdf.PDFMergerUtility;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureTreeRoot;
import org.apache.pdfbox.pdmodel.interactive.viewerpreferences.PDViewerPreferences;

/** PDFs put together. */
public final class PdfFiles {
    private PdfFiles() {
    }

    /**
     * Several PDFs as one, in their order; the tags stay, and what each holds keeps its language.
     *
     * @param title shown by readers as the document's name
     * @param language code of the document as a whole
     * @throws UncheckedIOException when it cannot be made
     */
    public static byte[] joined(List<byte[]> files, String title, String language) {
        List<PDDocument> parts = new ArrayList<>();
        try (PDDocument all = new PDDocument()) {
            PDFMergerUtility merger = new PDFMergerUtility();
            for (byte[] file : files) {
                PDDocument part = Loader.loadPDF(file);
                parts.add(part); // it must stay open until the whole is written
                keepLanguage(part);
                merger.appendDocument(all, part);
            }
            all.getDocumentInformation().setTitle(title);
            all.getDocumentInformation().setProducer("Stepwell");
            all.getDocumentCatalog().setLanguage(language);
            PDViewerPreferences shown = new PDViewerPreferences(new COSDictionary());
            shown.setDisplayDocTitle(true);
            all.getDocumentCatalog().setViewerPreferences(shown);
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            all.save(out);
            return out.toByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException("the PDF of \"" + title + "\" could not be put together", e);
        } finally {
            parts.forEach(PdfFiles::close);
        }
    }

    private static void keepLanguage(PDDocument part) {
        PDStructureTreeRoot tags = part.getDocumentCatalog().getStructureTreeRoot();
        if (tags != null) {
            tags.getKids().stream().filter(PDStructureElement.class::isInstance).map(PDStructureElement.class::cast)
                    .forEach(top -> top.setLanguage(part.getDocumentCatalog().getLanguage()));
        }
    }

    private static void close(PDDocument part) {
        try {
            part.close();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
