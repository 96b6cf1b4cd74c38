package leadwright.catalog.text;

import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Words in messages: how a value is shown, and which known word a misspelt one is nearest to. */
public final class Spelling {

    private static final int LONGEST_SHOWN = 60;
    private static final int LONGEST_LIST = 24;

    private Spelling() {}

    /** The value in quotes, shortened, with control and direction characters spelt out. */
    public static String show(String value) {
        StringBuilder shown = new StringBuilder("'");
        int characters = 0;
        for (int i = 0; i < value.length(); i += Character.charCount(value.codePointAt(i))) {
            if (characters++ == LONGEST_SHOWN) {
                return shown.append("…'").toString();
            }
            int point = value.codePointAt(i);
            if (invisible(point)) {
                shown.append(codePoint(point));
            } else {
                shown.appendCodePoint(point);
            }
        }
        return shown.append("'").toString();
    }

    static String codePoint(int point) {
        return String.format(Locale.ROOT, "U+%04X", point);
    }

    private static boolean invisible(int point) {
        int type = Character.getType(point);
        return type == Character.CONTROL
                || type == Character.FORMAT
                || type == Character.SURROGATE
                || type == Character.LINE_SEPARATOR
                || type == Character.PARAGRAPH_SEPARATOR;
    }

    /** What to say after a word that is not known: the nearest one, or the list of those that are. */
    public static String instead(String word, Collection<String> known) {
        return instead(nearest(word, known), known);
    }

    static String instead(Optional<String> nearest, Collection<String> known) {
        if (nearest.isPresent()) {
            return "did you mean '" + nearest.get() + "'?";
        }
        if (known.isEmpty()) {
            return "none is known here";
        }
        if (known.size() > LONGEST_LIST) {
            return "no known word is near it";
        }
        return known(known);
    }

    /** All words that are known, where none of them may be guessed. */
    static String known(Collection<String> known) {
        return "known: " + String.join(", ", known);
    }

    /** The known word with the fewest edits; none when more than a third of the word (at least one letter) differs. */
    public static Optional<String> nearest(String word, Collection<String> known) {
        String wanted = fold(word);
        Optional<String> best = Optional.empty();
        int fewest = Integer.MAX_VALUE;
        for (String candidate : known) {
            int longest = Math.max(wanted.length(), candidate.length());
            int allowed = Math.max(1, longest / 3);
            if (Math.abs(wanted.length() - candidate.length()) > allowed) {
                continue;
            }
            int edits = edits(wanted, fold(candidate));
            if (edits <= allowed && edits < fewest && edits < longest) {
                fewest = edits;
                best = Optional.of(candidate);
            }
        }
        return best;
    }

    private static String fold(String word) {
        return word.toLowerCase(Locale.ROOT).replace('_', '-').replace(' ', '-');
    }

    /** Optimal string alignment: insertions, deletions, replacements, neighbours exchanged. */
    static int edits(String left, String right) {
        int[][] cost = new int[left.length() + 1][right.length() + 1];
        for (int i = 0; i <= left.length(); i++) {
            cost[i][0] = i;
        }
        for (int j = 0; j <= right.length(); j++) {
            cost[0][j] = j;
        }
        for (int i = 1; i <= left.length(); i++) {
            for (int j = 1; j <= right.length(); j++) {
                int replaced = left.charAt(i - 1) == right.charAt(j - 1) ? 0 : 1;
                cost[i][j] = Math.min(Math.min(cost[i - 1][j] + 1, cost[i][j - 1] + 1), cost[i - 1][j - 1] + replaced);
                if (i > 1
                        && j > 1
                        && left.charAt(i - 1) == right.charAt(j - 2)
                        && left.charAt(i - 2) == right.charAt(j - 1)) {
                    cost[i][j] = Math.min(cost[i][j], cost[i - 2][j - 2] + 1);
                }
            }
        }
        return cost[left.length()][right.length()];
    }

    /** {@code a, b or c}. */
    static String either(List<String> words) {
        return words.size() < 2
                ? String.join("", words)
                : String.join(", ", words.subList(0, words.size() - 1)) + " or " + words.get(words.size() - 1);
    }
}
