package leadwright.render.diagram;

import java.util.List;

/**
 * What takes one row: a pin, or several neighbouring pins that go the same way in every hookup and are drawn as one ribbon.
 */
record Unit(List<Panel.Pin> pins) {
    Unit {
        pins = List.copyOf(pins);
    }

    /** The first pin's id. */
    String id() {
        return pins.get(0).id();
    }

    Panel.Pin pin() {
        return pins.get(0);
    }

    /** Label of one of its pins. */
    String label(String pin) {
        return pins.stream()
                .filter(each -> each.id().equals(pin))
                .map(Panel.Pin::label)
                .findFirst()
                .orElse(pin);
    }

    boolean ribbon() {
        return pins.size() > 1;
    }
}
