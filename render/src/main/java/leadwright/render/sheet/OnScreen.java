package leadwright.render.sheet;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Base64;
import java.util.HexFormat;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * The paper form as a page to fill in on a screen. The page source of the paper stays as it is; set into it are a look for
 * the screen, the script that makes its squares and boxes take ticks and values, and the policy that lets nothing else run
 * and nothing be sent. Without a script the page is the paper form.
 */
public final class OnScreen {

    private static final Pattern STYLE = Pattern.compile("<style>(.*?)</style>", Pattern.DOTALL);
    private static final String HEAD = "<head><meta charset=\"UTF-8\"/>";

    private OnScreen() {}

    /**
     * @param paper a page source of {@link BenchSheet}
     * @param data what the script must know of the plan: JSON that may stand in a script element
     * @return one file that refers to nothing outside itself, well-formed as XML too; the same for the same input
     */
    public static String page(String paper, String data) {
        if (!paper.contains(HEAD)) {
            throw new IllegalArgumentException("no page source of a sheet");
        }
        String look = PageStyle.resource("screen.css");
        List<String> styles = new ArrayList<>(List.of(look));
        Matcher style = STYLE.matcher(paper);
        while (style.find()) {
            styles.add(style.group(1));
        }
        List<String> scripts = List.of(script("judging.js"), script("readings.js"), script("bench.js"));
        String head =
                HEAD + "<meta http-equiv=\"Content-Security-Policy\" content=\"" + policy(styles, scripts) + "\"/>";
        String code =
                scripts.stream().map(each -> "<script>" + each + "</script>").collect(Collectors.joining("\n"));
        String known = "<script type=\"application/json\" id=\"bench-data\" data-form=\"" + hex(paper) + "\">" + data
                + "</script>";
        return paper.replace(HEAD, head)
                .replace("</head>", "<style>" + look + "</style></head>")
                .replace("</body>", known + "\n" + code + "\n</body>");
    }

    /** Only what stands in this file runs and styles; nothing is fetched, sent or embedded. */
    private static String policy(List<String> styles, List<String> scripts) {
        return "default-src 'none'; style-src " + hashes(styles) + "; script-src " + hashes(scripts)
                + "; img-src data:; form-action 'none'; base-uri 'none'";
    }

    private static String hashes(List<String> texts) {
        return texts.stream()
                .map(text -> "'sha256-" + Base64.getEncoder().encodeToString(sha256(text)) + "'")
                .distinct()
                .collect(Collectors.joining(" "));
    }

    /** Names the form, so that ticks are put back only on the form that they were made on. */
    private static String hex(String paper) {
        return HexFormat.of().formatHex(sha256(paper), 0, 8);
    }

    private static byte[] sha256(String text) {
        try {
            return MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    /** A script in the marks that let XML hold any of its characters; to a browser they are comments. */
    private static String script(String name) {
        return "//<![CDATA[\n" + PageStyle.resource(name) + "//]]>";
    }
}
