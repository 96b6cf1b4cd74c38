package leadwright.render.export;

import java.awt.image.BufferedImage;
import java.awt.image.DataBufferByte;
import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.zip.CRC32;
import java.util.zip.Deflater;

/**
 * Writes a picture as a PNG file (ISO/IEC 15948): three bytes a pixel, rows as they are, the resolution said. Batik's own
 * writer packs at the hardest level, which for line art takes ten times as long and saves a tenth of the bytes.
 */
final class PngFile {

    private static final byte[] SIGNATURE = {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n'};
    private static final int PACKING = 4;

    private PngFile() {}

    /**
     * The bytes of the file.
     *
     * @param picture of the kind {@link BufferedImage#TYPE_3BYTE_BGR}
     */
    static byte[] bytes(BufferedImage picture, int dotsPerMetre) {
        ByteArrayOutputStream file = new ByteArrayOutputStream(1 << 18);
        file.writeBytes(SIGNATURE);
        ByteBuffer header = ByteBuffer.allocate(13);
        // Eight bits a channel, red green blue, the one packing, the one set of filters, no interlacing.
        header.putInt(picture.getWidth()).putInt(picture.getHeight()).put(new byte[] {8, 2, 0, 0, 0});
        chunk(file, "IHDR", header.array());
        ByteBuffer resolution = ByteBuffer.allocate(9);
        resolution.putInt(dotsPerMetre).putInt(dotsPerMetre).put((byte) 1);
        chunk(file, "pHYs", resolution.array());
        chunk(file, "IDAT", packed(rows(picture)));
        chunk(file, "IEND", new byte[0]);
        return file.toByteArray();
    }

    /** The pixels row by row, each row with the number of its filter before it: 0, none. */
    private static byte[] rows(BufferedImage picture) {
        byte[] pixels = ((DataBufferByte) picture.getRaster().getDataBuffer()).getData();
        int length = 3 * picture.getWidth();
        byte[] rows = new byte[picture.getHeight() * (length + 1)];
        int to = 0;
        for (int from = 0; from < pixels.length; from += 3) {
            if (from % length == 0) {
                to++;
            }
            rows[to++] = pixels[from + 2];
            rows[to++] = pixels[from + 1];
            rows[to++] = pixels[from];
        }
        return rows;
    }

    private static byte[] packed(byte[] data) {
        Deflater deflater = new Deflater(PACKING);
        try {
            deflater.setInput(data);
            deflater.finish();
            ByteArrayOutputStream packed = new ByteArrayOutputStream(1 << 18);
            byte[] part = new byte[1 << 15];
            while (!deflater.finished()) {
                packed.write(part, 0, deflater.deflate(part));
            }
            return packed.toByteArray();
        } finally {
            deflater.end();
        }
    }

    private static void chunk(ByteArrayOutputStream file, String name, byte[] data) {
        byte[] type = name.getBytes(StandardCharsets.US_ASCII);
        CRC32 sum = new CRC32();
        sum.update(type);
        sum.update(data);
        file.writeBytes(ByteBuffer.allocate(4).putInt(data.length).array());
        file.writeBytes(type);
        file.writeBytes(data);
        file.writeBytes(ByteBuffer.allocate(4).putInt((int) sum.getValue()).array());
    }
}
