package leadwright.render.export;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;

/**
 * A colour profile that says "these are ordinary screen colours" (sRGB), as an archivable PDF must carry one. Built
 * here from the primaries, the white point and the curve of IEC 61966-2-1 (values from memory), the primaries adapted
 * to the D50 white that ICC profiles use. Layout of ICC version 2.1, from memory; a test has the Java library read
 * it and compares the colours.
 */
final class SrgbProfile {

    private static final int HEADER = 128;
    private static final int CURVE_POINTS = 1024;
    private static final String[] TAGS = {"cprt", "desc", "wtpt", "rXYZ", "gXYZ", "bXYZ", "rTRC", "gTRC", "bTRC"};

    private SrgbProfile() {}

    /** The profile, the same bytes every time. */
    static byte[] bytes() {
        byte[] curve = curve();
        byte[][] values = {
            text("Public domain"),
            description("sRGB"),
            xyz(0.9505, 1.0, 1.0891),
            xyz(0.43607, 0.22249, 0.01392),
            xyz(0.38515, 0.71687, 0.09708),
            xyz(0.14307, 0.06061, 0.71410),
            curve,
            curve,
            curve
        };
        int at = HEADER + 4 + 12 * TAGS.length;
        int[] offsets = new int[values.length];
        for (int i = 0; i < values.length; i++) {
            boolean shared = i > 0 && values[i] == values[i - 1];
            offsets[i] = shared ? offsets[i - 1] : at;
            at += shared ? 0 : padded(values[i].length);
        }
        ByteBuffer profile = ByteBuffer.allocate(at);
        header(profile, at);
        profile.putInt(TAGS.length);
        for (int i = 0; i < values.length; i++) {
            profile.put(ascii(TAGS[i])).putInt(offsets[i]).putInt(values[i].length);
        }
        for (int i = 0; i < values.length; i++) {
            profile.position(offsets[i]);
            profile.put(values[i]);
        }
        return profile.array();
    }

    private static void header(ByteBuffer profile, int size) {
        profile.putInt(size).putInt(0).putInt(0x02100000);
        profile.put(ascii("mntr")).put(ascii("RGB ")).put(ascii("XYZ "));
        // A fixed date: the profile never changes.
        profile.putShort((short) 2026).putShort((short) 11).putShort((short) 25);
        profile.putShort((short) 0).putShort((short) 0).putShort((short) 0);
        profile.put(ascii("acsp"));
        profile.position(68);
        profile.putInt(fixed(0.9642)).putInt(fixed(1.0)).putInt(fixed(0.8249));
        profile.position(HEADER);
    }

    private static byte[] text(String text) {
        return ByteBuffer.allocate(8 + text.length() + 1)
                .put(ascii("text"))
                .putInt(0)
                .put(ascii(text))
                .array();
    }

    private static byte[] description(String text) {
        int length = text.length() + 1;
        // After the plain text come an empty Unicode and an empty Macintosh text, 78 bytes in all.
        return ByteBuffer.allocate(12 + length + 78)
                .put(ascii("desc"))
                .putInt(0)
                .putInt(length)
                .put(ascii(text))
                .array();
    }

    private static byte[] xyz(double x, double y, double z) {
        return ByteBuffer.allocate(20)
                .put(ascii("XYZ "))
                .putInt(0)
                .putInt(fixed(x))
                .putInt(fixed(y))
                .putInt(fixed(z))
                .array();
    }

    private static byte[] curve() {
        ByteBuffer curve = ByteBuffer.allocate(12 + 2 * CURVE_POINTS);
        curve.put(ascii("curv")).putInt(0).putInt(CURVE_POINTS);
        for (int i = 0; i < CURVE_POINTS; i++) {
            double v = (double) i / (CURVE_POINTS - 1);
            double light = v <= 0.04045 ? v / 12.92 : Math.pow((v + 0.055) / 1.055, 2.4);
            curve.putShort((short) Math.round(light * 65535));
        }
        return curve.array();
    }

    private static int fixed(double value) {
        return (int) Math.round(value * 65536);
    }

    private static int padded(int length) {
        return (length + 3) / 4 * 4;
    }

    private static byte[] ascii(String text) {
        return text.getBytes(StandardCharsets.US_ASCII);
    }
}
