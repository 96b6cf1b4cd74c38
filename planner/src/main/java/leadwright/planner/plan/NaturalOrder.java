package leadwright.planner.plan;

import java.util.Comparator;

/** The order of ids in every answer: runs of digits compare by value, all else by code point. */
public final class NaturalOrder {

    public static final Comparator<String> IDS = NaturalOrder::compare;

    private NaturalOrder() {}

    private static int compare(String a, String b) {
        int i = 0;
        int j = 0;
        while (i < a.length() && j < b.length()) {
            if (isDigit(a.charAt(i)) && isDigit(b.charAt(j))) {
                int iEnd = endOfDigits(a, i);
                int jEnd = endOfDigits(b, j);
                int byValue = byValue(a, afterZeros(a, i, iEnd), iEnd, b, afterZeros(b, j, jEnd), jEnd);
                if (byValue != 0) {
                    return byValue;
                }
                i = iEnd;
                j = jEnd;
            } else {
                int byChar = Character.compare(a.charAt(i), b.charAt(j));
                if (byChar != 0) {
                    return byChar;
                }
                i++;
                j++;
            }
        }
        int byRest = Integer.compare(a.length() - i, b.length() - j);
        // "a01" and "a1" are equal by value: the text decides, so that the order is total.
        return byRest != 0 ? byRest : a.compareTo(b);
    }

    /** Of two runs of digits without leading zeros the longer is greater. */
    private static int byValue(String a, int i, int iEnd, String b, int j, int jEnd) {
        int length = iEnd - i;
        if (length != jEnd - j) {
            return Integer.compare(length, jEnd - j);
        }
        for (int k = 0; k < length; k++) {
            int byDigit = Character.compare(a.charAt(i + k), b.charAt(j + k));
            if (byDigit != 0) {
                return byDigit;
            }
        }
        return 0;
    }

    private static int afterZeros(String text, int from, int end) {
        int at = from;
        while (at < end && text.charAt(at) == '0') {
            at++;
        }
        return at;
    }

    private static boolean isDigit(char c) {
        return c >= '0' && c <= '9';
    }

    private static int endOfDigits(String text, int from) {
        int end = from;
        while (end < text.length() && isDigit(text.charAt(end))) {
            end++;
        }
        return end;
    }
}
