package leadwright.render.export;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.Calendar;
import java.util.GregorianCalendar;
import java.util.Locale;
import java.util.Optional;
import java.util.TimeZone;
import java.util.regex.Pattern;
import java.util.zip.CRC32;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSString;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.common.PDMetadata;
import org.apache.pdfbox.pdmodel.common.PDStream;

/**
 * What a PDF says about itself apart from its pages: date, identifier, meaning of its colours. None of it comes from
 * the clock, so that the same page gives the same bytes.
 */
final class PdfIdentity {

    private static final Pattern XMP_DATES = Pattern.compile("\\s*<xmp:(Create|Modify)Date>[^<]*</xmp:\\1Date>");

    private PdfIdentity() {}

    /**
     * Completes a typeset document.
     *
     * @param source the page the document was made of; its check sum becomes the identifier
     * @param date the date to write, midnight UTC; without one the document carries no date
     */
    static void set(PDDocument document, String source, Optional<LocalDate> date) throws IOException {
        PDDocumentInformation information = document.getDocumentInformation();
        Calendar stamp = new GregorianCalendar(TimeZone.getTimeZone("UTC"), Locale.ROOT);
        stamp.clear();
        date.ifPresent(day -> stamp.set(day.getYear(), day.getMonthValue() - 1, day.getDayOfMonth()));
        information.setCreationDate(date.isPresent() ? stamp : null);
        information.setModificationDate(date.isPresent() ? stamp : null);
        setXmpDates(document, date);
        setColours(document);
        CRC32 sum = new CRC32();
        sum.update(source.getBytes(StandardCharsets.UTF_8));
        document.setDocumentId(sum.getValue());
    }

    /** The dates in the XMP packet must say the same as the others. */
    private static void setXmpDates(PDDocument document, Optional<LocalDate> date) throws IOException {
        PDMetadata metadata = document.getDocumentCatalog().getMetadata();
        String xmp;
        try (InputStream in = metadata.exportXMPMetadata()) {
            xmp = new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
        String without = XMP_DATES.matcher(xmp).replaceAll("");
        if (date.isPresent()) {
            String day = date.get() + "T00:00:00Z";
            String dates = "<xmp:CreateDate>" + day + "</xmp:CreateDate><xmp:ModifyDate>" + day + "</xmp:ModifyDate>";
            xmp = xmp.replaceFirst("<xmp:CreateDate>[^<]*</xmp:CreateDate>", dates);
        } else {
            xmp = without;
        }
        metadata.importXMPMetadata(xmp.getBytes(StandardCharsets.UTF_8));
    }

    /** Written by hand, since the library's own way starts the colour management of the Java desktop. */
    private static void setColours(PDDocument document) throws IOException {
        PDStream profile = new PDStream(document, new ByteArrayInputStream(SrgbProfile.bytes()), COSName.FLATE_DECODE);
        profile.getCOSObject().setInt(COSName.N, 3);
        COSDictionary intent = new COSDictionary();
        intent.setItem(COSName.TYPE, COSName.OUTPUT_INTENT);
        intent.setItem(COSName.S, COSName.GTS_PDFA1);
        intent.setItem(COSName.OUTPUT_CONDITION_IDENTIFIER, new COSString("sRGB"));
        intent.setItem(COSName.INFO, new COSString("sRGB IEC 61966-2-1"));
        intent.setItem(COSName.DEST_OUTPUT_PROFILE, profile);
        COSArray intents = new COSArray();
        intents.add(intent);
        document.getDocumentCatalog().getCOSObject().setItem(COSName.OUTPUT_INTENTS, intents);
    }
}
