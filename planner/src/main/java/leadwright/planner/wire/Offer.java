package leadwright.planner.wire;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import leadwright.catalog.kit.ItemKind;
import leadwright.catalog.kit.KitItem;

/**
 * A kind of item of which a kit may be given more pieces.
 *
 * @param like id of the item of the kit that a new kind resembles; empty where it resembles none
 * @param asked what is asked of a new kind beside its ends, in words that follow its name
 * @param lengths lengths that may do, in micrometres and rising; of a new kind the least that does is proposed
 */
record Offer(Origin origin, KitItem item, String like, List<Ask> asked, List<Long> lengths) {
    private static final Pattern PRICE = Pattern.compile("(\\d+(?:\\.\\d+)?)\\s*(\\S+)");

    enum Origin {
        OWN,
        NEW
    }

    /** What of a new kind counts. */
    enum Ask {
        LENGTH,
        VOLTAGE,
        CURRENT,
        CONDUCTOR,
        CAPACITANCE,
        ALSO
    }

    Offer {
        asked = List.copyOf(asked);
        lengths = List.copyOf(lengths);
    }

    static Offer own(KitItem item) {
        return new Offer(Origin.OWN, item, "", List.of(), List.of());
    }

    boolean isNew() {
        return origin == Origin.NEW;
    }

    Offer with(KitItem other) {
        return new Offer(origin, other, like, asked, lengths);
    }

    Offer with(long micrometres) {
        return with(WhatIf.like(item, item.id(), micrometres, item.branches()));
    }

    Offer withBranches(int branches) {
        return with(WhatIf.like(item, item.id(), Bench.length(item), branches));
    }

    /** For ranking; an item without a price and a new kind, whose price nobody knows, count as nothing. */
    BigDecimal price() {
        return item.price()
                .filter(price -> !isNew())
                .map(PRICE::matcher)
                .filter(Matcher::matches)
                .map(found -> new BigDecimal(found.group(1)))
                .orElse(BigDecimal.ZERO);
    }

    /** {@code 2 more comb (fan-out of 8, 48 GBP each, 96 GBP together)}. */
    String text(int count) {
        if (origin == Origin.OWN) {
            String kind = item.kind() == ItemKind.FAN_OUT
                    ? "fan-out of " + item.branches()
                    : item.kind().word().replace('-', ' ');
            return count + " more " + item.id() + " (" + kind + priced(count) + ")";
        }
        List<String> words = new ArrayList<>();
        String kind = item.kind() == ItemKind.FAN_OUT
                ? item.kind().word()
                : item.kind().word().replace('-', ' ');
        String name = count + " " + kind + (count == 1 ? "" : "s");
        if (!like.isEmpty()) {
            words.add(name + " like '" + like + "'");
        } else if (item.kind() == ItemKind.FAN_OUT) {
            words.add(name + " of " + item.branches() + " branches or more, from "
                    + item.ends().get(0) + " to " + item.ends().get(1));
        } else {
            words.add(
                    name + " from " + item.ends().get(0) + " to " + item.ends().get(1));
        }
        asked.forEach(ask -> say(ask).ifPresent(words::add));
        return String.join(", ", words);
    }

    private Optional<String> say(Ask ask) {
        return switch (ask) {
            // A longer lead for earth readings has more resistance: it may not do.
            case LENGTH ->
                item.length()
                        .map(length -> length.text() + (asked.contains(Ask.CONDUCTOR) ? " long" : " long or longer"));
            case VOLTAGE -> item.voltage().map(volts -> "rated for " + volts.text() + " or more");
            case CURRENT -> item.current().map(current -> "rated for " + current.text() + " or more");
            case CONDUCTOR -> item.conductor().map(conductor -> "of " + conductor + " or thicker");
            case CAPACITANCE -> Optional.of("of next to no capacitance");
            case ALSO -> Optional.of("that also goes on " + String.join(", ", item.also()));
        };
    }

    private String priced(int count) {
        if (item.price().isEmpty()) {
            return "";
        }
        Matcher price = PRICE.matcher(item.price().get());
        if (count == 1 || !price.matches()) {
            return ", " + item.price().get() + (count == 1 ? "" : " each");
        }
        BigDecimal together = new BigDecimal(price.group(1)).multiply(BigDecimal.valueOf(count));
        return ", " + item.price().get() + " each, " + together.toPlainString() + " " + price.group(2) + " together";
    }
}
