package leadwright.catalog.table;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;

/** Files that come with the program for people to start from: device outlines and the default bench kit. */
public final class ShippedFiles {

    private static final List<String> OUTLINES = List.of(
            "defibrillator-monitor",
            "dialysis-machine",
            "eeg-sleep-recorder",
            "fixed-table",
            "infusion-pump",
            "internally-powered-recorder",
            "laboratory-analyser",
            "resting-ecg-recorder",
            "ultrasound-body-cavity-probe",
            "ward-monitor");

    private ShippedFiles() {}

    /** Names of the device outlines, in alphabetical order. */
    public static List<String> outlines() {
        return OUTLINES;
    }

    /**
     * The text of an outline, a {@code device/1} file in UTF-8.
     *
     * @throws IllegalArgumentException when the name is none of {@link #outlines}
     */
    public static byte[] outline(String name) {
        if (!OUTLINES.contains(name)) {
            throw new IllegalArgumentException("no outline '" + name + "'");
        }
        return bytes("outlines/" + name + ".yaml");
    }

    /** The bench kit that is taken where none is given, a {@code kit/1} file in UTF-8. */
    public static byte[] defaultKit() {
        return bytes("default-kit.yaml");
    }

    private static byte[] bytes(String name) {
        try (InputStream in = ShippedFiles.class.getResourceAsStream("/leadwright/catalog/" + name)) {
            if (in == null) {
                throw new IllegalStateException("the catalog has no " + name);
            }
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
