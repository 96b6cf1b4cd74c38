package leadwright.catalog.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Bytes and syntax: what is refused, where, and in which words; and what is read as it stands. */
class TreeTest {

    private static List<String> problems(byte[] bytes) {
        Findings findings = new Findings("f");
        Tree.read(bytes, findings);
        return findings.problems().stream().map(Problem::text).toList();
    }

    private static byte[] bytes(Object... parts) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        for (Object part : parts) {
            if (part instanceof Integer value) {
                out.write(value);
            } else {
                out.writeBytes(part.toString().getBytes(StandardCharsets.UTF_8));
            }
        }
        return out.toByteArray();
    }

    static Stream<Arguments> broken() {
        return Stream.of(
                Arguments.of(
                        "tab as indentation", bytes("a:\n\tb: 1\n"), "f:2:1: a tab stands here; indent with spaces"),
                Arguments.of("tab after spaces", bytes("a:\n  b: 1\n  \tc: 2\n"), "a tab stands here"),
                Arguments.of(
                        "open bracket",
                        bytes("a: [1, 2\nb: 3\n"),
                        "f:2:2: this cannot be read as YAML or JSON: expected ',' or ']', but got :; a comma or the closing bracket is missing before this place; the bracket opened in line 1"),
                Arguments.of(
                        "indentation", bytes("a:\n   b: 1\n  c: 2\n"), "lines of one section begin in the same column"),
                Arguments.of("colon in text", bytes("name: a: b\n"), "f:1:8: this cannot be read"),
                Arguments.of("no colon", bytes("name x\nb: 2\n"), "f:2:2: this cannot be read as YAML or JSON"),
                Arguments.of("at sign", bytes("a: @b\n"), "f:1:4: this cannot be read as YAML or JSON"),
                Arguments.of("open quote", bytes("a: \"b\n"), "the quote opened in line 1"),
                Arguments.of("bad escape", bytes("a: \"\\q\"\n"), "f:1:6"),
                Arguments.of(
                        "alias", bytes("a: &x 1\nb: *x\n"), "f:2:4: the alias *x is not read; write the value out"),
                Arguments.of("anchor", bytes("a: &x 1\n"), "f:1:4: the anchor &x is not read; take it out"),
                Arguments.of("anchor of a list", bytes("a: &x [1]\n"), "f:1:4: the anchor &x is not read"),
                Arguments.of("tag", bytes("a: !!str 1\n"), "f:1:4: the tag 'tag:yaml.org,2002:str' is not read"),
                Arguments.of("tag of a section", bytes("a: !x {b: 1}\n"), "f:1:4: the tag '!x' is not read"),
                Arguments.of("tag that the library trips over", bytes("!%1E"), "f:1:1: the tag '!U+001E' is not read"),
                Arguments.of("merge key", bytes("a: 1\n<<: {b: 2}\n"), "f:2:1: the merge key << is not read"),
                Arguments.of(
                        "key twice",
                        bytes("a: 1\nb: 2\na: 3\n"),
                        "f:3:1: key 'a' stands twice, first in line 1; keep one"),
                Arguments.of("key twice, quoted", bytes("a: 1\n\"a\": 3\n"), "f:2:1: key 'a' stands twice"),
                Arguments.of("section as key", bytes("? {a: 1}\n: 2\n"), "f:1:3: a key is a single word"),
                Arguments.of("null as key", bytes("~: 2\n"), "f:1:1: a key is a single word"),
                Arguments.of(
                        "two documents",
                        bytes("a: 1\n---\nb: 2\n"),
                        "f:2:1: a second document begins here; one file holds one"),
                Arguments.of("empty", bytes(""), "f:1:1: the file is empty"),
                Arguments.of("only a comment", bytes("# nothing\n"), "f:1:1: the file is empty"),
                Arguments.of(
                        "byte-order mark",
                        bytes(0xEF, 0xBB, 0xBF, "a: 1\n"),
                        "f:1:1: the file begins with a byte-order mark (UTF-8)"),
                Arguments.of("UTF-16", bytes(0xFF, 0xFE, "a", 0, ":", 0), "byte-order mark (UTF-16, little end first)"),
                Arguments.of(
                        "UTF-16, other end",
                        bytes(0xFE, 0xFF, 0, "a", 0, ":"),
                        "byte-order mark (UTF-16, big end first)"),
                Arguments.of(
                        "Latin-1",
                        bytes("a: 1\nname: Temp ", 0xB0, "C\n"),
                        "f:2:12: byte B0 is not UTF-8; save the file as UTF-8"),
                Arguments.of("cut UTF-8", bytes("a: ", 0xE2, 0x82), "f:1:4: byte E2 is not UTF-8"),
                Arguments.of("surrogate as UTF-8", bytes("a: ", 0xED, 0xA0, 0x80), "f:1:4: byte ED is not UTF-8"),
                Arguments.of("NUL", bytes("a: 1\nb: ", 0, "\n"), "f:2:4: character U+0000 is not text; take it out"),
                Arguments.of(
                        "NUL, escaped",
                        bytes("a: \"x\\0y\"\n"),
                        "f:1:4: holds the character U+0000, which is not text"),
                Arguments.of("half a pair, escaped", bytes("{\"a\": \"\\ud800\"}"), "which is not text"),
                Arguments.of("bell", bytes("a: ", 7, "\n"), "f:1:4: character U+0007 is not text"),
                Arguments.of("noncharacter", bytes("a: \uffff\n"), "f:1:4: character U+FFFF is not text"),
                Arguments.of("deep list", bytes("a: " + "[".repeat(5000)), "f:1:43: nested more than 40 deep"),
                Arguments.of("deep section", bytes("{a: ".repeat(5000)), "f:1:161: nested more than 40 deep"),
                Arguments.of("deep block", bytes(deepBlock(60)), "f:41:41: nested more than 40 deep"),
                Arguments.of("huge", huge(), "f:1:1: the file has 4194305 bytes; at most 4194304 are read"),
                Arguments.of(
                        "version directive",
                        bytes("%YAML 9.9\n---\na: 1\n"),
                        "f:1:1: this is not YAML or JSON that can be read"));
    }

    private static String deepBlock(int depth) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < depth; i++) {
            text.append(" ".repeat(i)).append("a:\n");
        }
        return text.toString();
    }

    private static byte[] huge() {
        byte[] bytes = new byte[TextCheck.MOST_BYTES + 1];
        Arrays.fill(bytes, (byte) '#');
        return bytes;
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("broken")
    void isRefused(String name, byte[] bytes, String expected) {
        assertThat(problems(bytes))
                .isNotEmpty()
                .anySatisfy(problem -> assertThat(problem).contains(expected));
    }

    @Test
    void scalarsFollowTheCoreSchema() {
        Findings findings = new Findings("f");
        Node root = Tree.read(
                        bytes(
                                "{a: no, b: 0123, c: 1_000, d: ~, e: 0x1F, f: true, g: 1.5, h: 'true', i: , j: NO, k: 12:30}"),
                        findings)
                .orElseThrow();
        assertThat(findings.problems()).isEmpty();
        assertThat(((Node.Mapping) root).entries())
                .extracting(entry -> ((Node.Scalar) entry.value()).type())
                .containsExactly(
                        Node.Type.TEXT,
                        Node.Type.WHOLE,
                        Node.Type.TEXT,
                        Node.Type.NOTHING,
                        Node.Type.WHOLE,
                        Node.Type.YES_NO,
                        Node.Type.DECIMAL,
                        Node.Type.TEXT,
                        Node.Type.NOTHING,
                        Node.Type.TEXT,
                        Node.Type.TEXT);
        assertThat(((Node.Mapping) root).entry("b").orElseThrow().value())
                .isEqualTo(new Node.Scalar(new Place(1, 12), "0123", Node.Type.WHOLE));
    }

    @Test
    void columnsCountCharacters() {
        Findings findings = new Findings("f");
        Tree.read(bytes("{name: \"\uD83D\uDE00 \u00e9\", name: 2}"), findings);
        assertThat(findings.problems())
                .extracting(Problem::text)
                .containsExactly("f:1:15: key 'name' stands twice, first in line 1; keep one");
    }

    @Test
    void anyTextIsData() {
        String strange =
                "\u202Eevil\u202C <script>alert('x')</script> \uD83D\uDC69\u200D\uD83D\uDD2C {{x}} ${y} %s \\n "
                        + "n".repeat(500);
        Findings findings = new Findings("f");
        Node root = Tree.read(bytes("a: '" + strange.replace("'", "''") + "'\n"), findings)
                .orElseThrow();
        assertThat(findings.problems()).isEmpty();
        assertThat(((Node.Scalar) ((Node.Mapping) root).entry("a").orElseThrow().value()).text())
                .isEqualTo(strange);
    }

    @Test
    void windowsLineEndsCountAsOne() {
        assertThat(problems(bytes("a: 1\r\nb: 2\r\na: 3\r\n")))
                .containsExactly("f:3:1: key 'a' stands twice, first in line 1; keep one");
    }
}
