package leadwright.render.export;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.Optional;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;
import leadwright.render.paper.Document;

/** Packs the parts of a word-processor file anew: no clock in the entries, and of the file only what the document says. */
final class DocxParcel {

    private static final String CORE = "docProps/core.xml";

    /** The same for every entry. The very first moment that a parcel knows would be written with the zone of the machine. */
    private static final LocalDateTime NEVER = LocalDateTime.of(2000, 1, 1, 0, 0);

    private DocxParcel() {}

    static byte[] sealed(byte[] parcel, Document document, Optional<LocalDate> date) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream(parcel.length);
        try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(parcel));
                ZipOutputStream out = new ZipOutputStream(bytes, StandardCharsets.UTF_8)) {
            for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
                ZipEntry still = new ZipEntry(entry.getName());
                still.setTimeLocal(NEVER);
                out.putNextEntry(still);
                out.write(entry.getName().equals(CORE) ? core(document, date) : in.readAllBytes());
                out.closeEntry();
            }
        }
        return bytes.toByteArray();
    }

    /** What the file says about itself. */
    private static byte[] core(Document document, Optional<LocalDate> date) {
        StringWriter text = new StringWriter();
        try {
            XMLStreamWriter out = XMLOutputFactory.newDefaultFactory().createXMLStreamWriter(text);
            out.writeStartDocument("UTF-8", "1.0");
            out.writeStartElement("cp:coreProperties");
            out.writeAttribute("xmlns:cp", "http://schemas.openxmlformats.org/package/2006/metadata/core-properties");
            out.writeAttribute("xmlns:dc", "http://purl.org/dc/elements/1.1/");
            out.writeAttribute("xmlns:dcterms", "http://purl.org/dc/terms/");
            out.writeAttribute("xmlns:xsi", "http://www.w3.org/2001/XMLSchema-instance");
            element(out, "dc:title", document.kind() + ": " + document.title());
            element(out, "dc:description", document.about());
            element(out, "dc:creator", "Leadwright");
            element(out, "dc:language", "en-GB");
            if (date.isPresent()) {
                moment(out, "dcterms:created", date.get());
                moment(out, "dcterms:modified", date.get());
            }
            out.writeEndElement();
            out.writeEndDocument();
        } catch (XMLStreamException e) {
            throw new IllegalStateException(e);
        }
        return text.toString().getBytes(StandardCharsets.UTF_8);
    }

    private static void moment(XMLStreamWriter out, String name, LocalDate day) throws XMLStreamException {
        out.writeStartElement(name);
        out.writeAttribute("xsi:type", "dcterms:W3CDTF");
        out.writeCharacters(day + "T00:00:00Z");
        out.writeEndElement();
    }

    private static void element(XMLStreamWriter out, String name, String text) throws XMLStreamException {
        out.writeStartElement(name);
        out.writeCharacters(text);
        out.writeEndElement();
    }
}
