package leadwright.catalog.quantity;

import java.math.BigDecimal;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** The border between written quantities such as {@code 1.5 mm2} and whole numbers of a base unit. */
public final class Quantities {

    private static final int LONGEST_SHOWN = 60;
    private static final Pattern WRITTEN = Pattern.compile("([+-]?\\d+(?:\\.\\d+)?)\\s*(\\S+)");
    private static final Pattern COMMA = Pattern.compile("[+-]?\\d+,\\d");
    private static final Pattern BARE = Pattern.compile("[+-]?\\d+(?:\\.\\d+)?");

    private Quantities() {}

    /**
     * Reads a number with its unit.
     *
     * @param text as written, for instance {@code 0.6 A}; micro may be {@code u} or the Greek letter, ohm the letter
     * @throws QuantityException when the unit is missing, unknown or of another dimension, or when the value is finer than
     *     the base unit or too large; the message says what would be right
     */
    public static Quantity parse(String text, Dimension expected) {
        return parse(text, List.of(expected));
    }

    /**
     * Reads a number whose unit tells which of several dimensions it has.
     *
     * @param expected at least one dimension; no unit belongs to two of them
     * @throws QuantityException as {@link #parse(String, Dimension)}
     */
    public static Quantity parse(String text, List<Dimension> expected) {
        String trimmed = text.trim();
        String customary = expected.get(0).customary();
        if (BARE.matcher(trimmed).matches()) {
            throw new QuantityException("'" + shown(trimmed) + "' has no unit; write for instance '" + shown(trimmed)
                    + " " + customary + "'");
        }
        if (COMMA.matcher(trimmed).lookingAt()) {
            throw new QuantityException("'" + shown(trimmed) + "' has a comma; decimals are written with a point");
        }
        Matcher matcher = WRITTEN.matcher(trimmed);
        if (!matcher.matches()) {
            throw new QuantityException(
                    "'" + shown(trimmed) + "' is not a number with its unit, such as '1 " + customary + "'");
        }
        String symbol = ascii(matcher.group(2));
        for (Dimension dimension : expected) {
            for (Dimension.Unit unit : dimension.units()) {
                if (unit.symbol().equals(symbol)) {
                    return new Quantity(dimension, exact(matcher.group(1), unit, trimmed));
                }
            }
        }
        throw new QuantityException("unit '" + shown(matcher.group(2)) + "' is not one for this value; use "
                + expected.stream()
                        .flatMap(dimension -> dimension.units().stream())
                        .map(Dimension.Unit::symbol)
                        .collect(Collectors.joining(", ")));
    }

    /** Short enough for a message, and without characters that a terminal obeys. */
    private static String shown(String text) {
        String plain = text.replaceAll("\\p{C}", "?");
        return plain.codePointCount(0, plain.length()) <= LONGEST_SHOWN
                ? plain
                : plain.substring(0, plain.offsetByCodePoints(0, LONGEST_SHOWN)) + "…";
    }

    private static long exact(String number, Dimension.Unit unit, String text) {
        try {
            return new BigDecimal(number)
                    .multiply(BigDecimal.valueOf(unit.baseUnits()))
                    .longValueExact();
        } catch (ArithmeticException e) {
            throw new QuantityException("'" + shown(text) + "' is too large or finer than this program counts");
        }
    }

    private static String ascii(String symbol) {
        return symbol.replace('\u00b5', 'u')
                .replace('\u03bc', 'u')
                .replace("\u03a9", "ohm")
                .replace("\u2126", "ohm")
                .replace("\u00b2", "2")
                .replace("\u00b0", "deg");
    }

    /** Exact ASCII text in the largest listed unit that keeps the number at one or above, as in the input files. */
    static String text(Quantity quantity) {
        if (quantity.dimension() == Dimension.PRICE) {
            return BigDecimal.valueOf(quantity.amount(), 2).toPlainString();
        }
        List<Dimension.Unit> units = preferred(quantity.dimension());
        Dimension.Unit chosen = units.get(0);
        for (Dimension.Unit unit : units) {
            if (Math.abs(quantity.amount()) >= unit.baseUnits()) {
                chosen = unit;
            }
        }
        String number = BigDecimal.valueOf(quantity.amount())
                .divide(BigDecimal.valueOf(chosen.baseUnits()))
                .stripTrailingZeros()
                .toPlainString();
        return chosen.symbol().equals("%") ? number + " %" : number + " " + chosen.symbol();
    }

    /** Seconds stay seconds and temperatures degrees: a start-up of 75 s is not written 1.25 min. */
    private static List<Dimension.Unit> preferred(Dimension dimension) {
        return switch (dimension) {
            case TIME -> dimension.units().subList(0, 2);
            case TEMPERATURE -> dimension.units().subList(0, 1);
            case POWER -> dimension.units().subList(0, 3);
            case LENGTH ->
                List.of(
                        dimension.units().get(0),
                        dimension.units().get(1),
                        dimension.units().get(3));
            default -> dimension.units();
        };
    }
}
