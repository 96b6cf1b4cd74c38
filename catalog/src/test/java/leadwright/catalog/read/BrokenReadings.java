package leadwright.catalog.read;

import java.util.ArrayList;
import java.util.List;

/** Broken readings: see {@link BrokenFile}. */
final class BrokenReadings {

    private static final List<BrokenFile> ALL = new ArrayList<>();

    private BrokenReadings() {}

    private static void broken(String from, String to, String... fragments) {
        ALL.add(BrokenFile.of("readings", from, to, fragments));
    }

    static List<BrokenFile> all() {
        return List.copyOf(ALL);
    }

    static {
        broken("plan: 3f9c0a71", "plan: §3F9C0A71", "'3F9C0A71' is no fingerprint of a plan");
        broken("plan: 3f9c0a71", "plan: §3f9c", "its first eight digits or more");
        broken("occasion: recurrent", "occasion: §recurent", "did you mean 'recurrent'?");
        broken(
                "device: {serial: \"1\", inventory: \"A-17\", accessories: []}",
                "device: §{accessories: []}",
                "'device' names no single device; 'serial' or 'inventory' is due");
        broken("date: 2027-01-10", "date: §10 January", "a date is year-month-day");
        broken("mains-voltage: 231 V", "mains-voltage: §231", "'231' has no unit");
        broken("mains-voltage: 231 V", "mains-voltage: §0 V", "'mains-voltage' is zero");
        broken("nulls: {start: 62 mohm, end: 63 mohm}", "nulls: §{end: 63 mohm}", "key 'start' is missing");
        broken("start: 62 mohm", "start: §-62 mohm", "less than nothing");
        broken("end: 63 mohm}", "end: 63 mohm, taken-off: §perhaps}", "is not a word for 'taken-off'");
        broken("value: 12.4 uA", "value: §12.4", "'12.4' has no unit");
        broken("value: 12.4 uA", "value: §\"12,4 uA\"", "decimals are written with a point");
        broken("value: 12.4 uA", "value: §12.4 kg", "unit 'kg' is not one for this value");
        broken("value: 12.4 uA", "value: §-12.4 uA", "no current or voltage is read so");
        broken("value: 12.4 uA", "value: §NaN", "is not a number with its unit");
        broken("value: 12.4 uA", "value: §\"< -1 mohm\"", "less than nothing");
        broken("value: 12.4 uA", "value: §\"\"", "'value' is empty");
        broken(
                "  - {id: R08, value: \"< 1 uA\"}",
                "  - §{id: R08}",
                "has no value; write it, or say under 'not-taken'");
        broken("value: 12.4 uA", "value: 12.4 uA, not-taken: §because", "keep one of the two");
        broken("not-taken: \"the maker forbids it\"", "not-taken: §\"\"", "'not-taken' is empty");
        broken("id: R08", "id: §R07", "id 'R07' stands twice, first in line 12");
        broken("id: R08", "id: §R 8", "'R 8' is no id");
        broken("remark: \"\"", "§remrk: \"\"", "unknown key 'remrk'; did you mean 'remark'?");
        broken("leadwright: readings/1", "leadwright: §readings/2", "version '/2' of readings is not known");
    }
}
