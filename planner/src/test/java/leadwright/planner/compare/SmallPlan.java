package leadwright.planner.compare;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.stream.Collectors;

/**
 * A hand-made plan of one hookup and five readings, and its text changed by hand.
 *
 * <pre>
 *   ecg.R, ecg.L, ecg.F ── snap-pin ── spread ── jack 1      pole-clamp ── jaw ── lead-short ── earth jack
 *   spo2.sensor ────────── wrap ─────────────── jack 2
 * </pre>
 */
final class SmallPlan {

    private SmallPlan() {}

    static String text() {
        try (InputStream in = SmallPlan.class.getResourceAsStream("plan.json")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static Side side() {
        return side(text());
    }

    static Side side(String text) {
        return SideFile.read("plan.json", text.getBytes(StandardCharsets.UTF_8)).orThrow();
    }

    /** The text with a piece replaced wherever it stands. */
    static String with(String text, String piece, String instead) {
        if (!text.contains(piece)) {
            throw new AssertionError("the plan does not contain: " + piece);
        }
        return text.replace(piece, instead);
    }

    /** The text without the lines that hold a piece: each reading and step has a line of its own. */
    static String without(String text, String piece) {
        if (!text.contains(piece)) {
            throw new AssertionError("the plan does not contain: " + piece);
        }
        return text.lines().filter(line -> !line.contains(piece)).collect(Collectors.joining("\n", "", "\n"));
    }

    /** The text with one piece replaced in the line that holds another. */
    static String inLine(String text, String line, String piece, String instead) {
        String found =
                text.lines().filter(each -> each.contains(line)).findFirst().orElseThrow();
        return with(text, found, with(found, piece, instead));
    }
}
