package leadwright.render;

import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/** Strings that files may bring and that some reader of a document could take for more than text. */
public final class HostileStrings {

    private HostileStrings() {}

    /** All of them; some are no text at all and must be refused. */
    public static List<String> all() {
        return Stream.of(MARKUP, QUOTES, LINKS, STYLES, DIRECTIONS, CONTROLS, FORMULAS, SYNTAX, PACKAGES, LONG, SIGNS)
                .flatMap(List::stream)
                .toList();
    }

    private static final List<String> MARKUP = List.of(
            "<script>alert(1)</script>",
            "</title><script>alert(2)</script>",
            "</text></svg><script>alert(3)</script>",
            "<svg onload=alert(4)>",
            "<img src=x onerror=alert(5)>",
            "<iframe src='http://localhost/'></iframe>",
            "<foreignObject><body onload='alert(6)'/></foreignObject>",
            "<use href='http://localhost/a.svg#b'/>",
            "</script><script>alert(7)",
            "]]>",
            "]]><svg onload=x>",
            "<![CDATA[ x ]]>",
            "<!-- remark",
            "--><script>alert(8)</script><!--",
            "<?xml-stylesheet href='x.css'?>",
            "<!DOCTYPE a [<!ENTITY b SYSTEM 'file:/etc/passwd'>]>",
            "&lt;b&gt;",
            "&amp;amp;",
            "&b; &#60; &#x3c;script&#x3e;",
            "<a<b>c");

    private static final List<String> QUOTES = List.of(
            "\" onmouseover=\"alert(9)",
            "' onfocus='alert(10)",
            "\"/><script>alert(11)</script>",
            "'><b>",
            "` onload=alert(12)",
            "\\\"; alert(13); //");

    private static final List<String> LINKS =
            List.of("javascript:alert(14)", "url(javascript:alert(15))", "data:text/html,<script>alert(16)</script>");

    private static final List<String> STYLES = List.of(
            "</style><style>* {display: none}",
            "} body {background: url(http://localhost/)}",
            "expression(alert(17))",
            "@import 'http://localhost/x.css';");

    private static final List<String> DIRECTIONS = List.of(
            "\u202eevil\u202c",
            "\u2067turned\u2069",
            "\u202d12\u202e34",
            "\u200f\u05d0\u05d1\u05d2 (BF)",
            "\u0635\u0636 \u0661\u0662",
            "never ended \u202e",
            "zero\u200bwidth\u200c and\u200d \ufeffmark",
            "soft\u00adhyphen");

    private static final List<String> CONTROLS = List.of(
            "nul\u0000",
            "bell\u0007",
            "esc\u001b[31m",
            "backspace\b\b",
            "form\ffeed",
            "upper\u0085half\u009b",
            "delete\u007f",
            "half \ud83d alone",
            "\udc89 other half",
            "no character \uffff",
            "one line\nand another",
            "tab\tand return\r");

    private static final List<String> FORMULAS = List.of(
            "=1+1",
            "=HYPERLINK(\"http://localhost\",\"x\")",
            "+1+1",
            "-2+3",
            "@SUM(1)",
            "|cmd",
            "\uff1d1+1",
            " =1+1",
            "a,\"b\"\n=1",
            "%0a=1");

    private static final List<String> SYNTAX = List.of(
            "{\"a\": [1]}",
            "\\u0022,",
            "key: value # remark",
            "- item",
            "!!python/object:x",
            "*alias &anchor",
            "null",
            "~");

    private static final List<String> PACKAGES = List.of(
            "<w:instrText>DDEAUTO cmd</w:instrText>",
            "</w:t></w:r><w:fldSimple w:instr='INCLUDETEXT'/>",
            "{{template}} ${jndi:x} <%= x %>",
            "../../../etc/passwd",
            "%s %n %1$s");

    private static final List<String> LONG =
            List.of("W".repeat(500), "words and ".repeat(50).strip(), "\ud83d\udc89".repeat(120));

    private static final List<String> SIGNS = List.of("\ud83d\udc89 \ud83e\ude7a", "\u6f22\u5b57 \u0416 \u03a9 \u00b5");

    /** The string as a scalar in double quotes that a YAML or JSON file may hold, what is not plain written as an escape. */
    public static String quoted(String text) {
        StringBuilder quoted = new StringBuilder("\"");
        for (char c : text.toCharArray()) {
            if (c == '"' || c == '\\') {
                quoted.append('\\').append(c);
            } else if (c < ' ' || c > '~') {
                quoted.append(String.format(Locale.ROOT, "\\u%04X", (int) c));
            } else {
                quoted.append(c);
            }
        }
        return quoted.append('"').toString();
    }

    /** What is left of the string where marks that cannot be seen are left out and every run of blanks is one. */
    public static String seen(String text) {
        StringBuilder seen = new StringBuilder();
        text.codePoints().forEach(c -> {
            switch (Character.getType(c)) {
                case Character.FORMAT, Character.SURROGATE, Character.UNASSIGNED -> {}
                case Character.CONTROL, Character.LINE_SEPARATOR, Character.PARAGRAPH_SEPARATOR -> seen.append(' ');
                default -> seen.appendCodePoint(c);
            }
        });
        return seen.toString().replaceAll("\\s+", " ").strip();
    }
}
