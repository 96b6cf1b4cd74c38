package leadwright.catalog.read;

import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import leadwright.catalog.house.Times;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.text.Fields;

/** The {@code times:} section of house rules: what it states replaces the default, all else stays. */
final class TimesReading {

    private TimesReading() {}

    static Times of(Optional<Fields> section) {
        Times defaults = Times.defaults();
        if (section.isEmpty()) {
            return defaults;
        }
        Map<String, Times.JoinPart> contacts = new TreeMap<>(defaults.contacts());
        contacts.replaceAll((kind, times) -> section.get()
                .optionalSection(kind)
                .map(own -> joinPart(own, times))
                .orElse(times));
        Map<String, Quantity> actions = new TreeMap<>(defaults.actions());
        actions.replaceAll(
                (action, time) -> Durations.optional(section.get(), action).orElse(time));
        return new Times(contacts, actions);
    }

    private static Times.JoinPart joinPart(Fields own, Times.JoinPart otherwise) {
        return new Times.JoinPart(
                Durations.optional(own, "join").orElse(otherwise.join()),
                Durations.optional(own, "part").orElse(otherwise.part()));
    }
}
