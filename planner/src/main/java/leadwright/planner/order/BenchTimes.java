package leadwright.planner.order;

import leadwright.catalog.device.Device;
import leadwright.catalog.house.House;
import leadwright.catalog.house.Times;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.table.ContactKind;

/** Times of a house and of a device in whole seconds. A fraction counts as a whole second: a plan promises no less. */
record BenchTimes(Times times, int startUp, int shutDown) {

    static BenchTimes of(Device device, House house) {
        return new BenchTimes(house.times(), seconds(device.startUp()), seconds(device.shutDown()));
    }

    static int seconds(Quantity time) {
        return Math.toIntExact((time.amount() + 999) / 1000);
    }

    int action(String word) {
        return seconds(times.action(word));
    }

    int join(ContactKind kind) {
        return seconds(times.contact(kind.timed().word()).join());
    }

    int part(ContactKind kind) {
        return seconds(times.contact(kind.timed().word()).part());
    }

    int outlet() {
        return action("outlet");
    }

    int conductor() {
        return action("open-conductor");
    }

    int polarity() {
        return action("polarity");
    }

    /** What turning the selector adds where the outlet is switched off and on for another reason anyway. */
    int selector() {
        return Math.max(0, polarity() - 2 * outlet());
    }

    int select() {
        return action("select");
    }

    int touch() {
        return action("touch");
    }

    int write() {
        return action("write");
    }

    /** What the first ordinary reading after a change takes beyond later ones. */
    int settling() {
        return Math.max(0, action("read-first") - action("read"));
    }
}
