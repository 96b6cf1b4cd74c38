package leadwright.catalog.read;

import java.util.ArrayList;
import java.util.List;

/** Broken house rules: see {@link BrokenFile}. */
final class BrokenHouses {

    private static final List<BrokenFile> ALL = new ArrayList<>();

    private BrokenHouses() {}

    private static void broken(String from, String to, String... fragments) {
        ALL.add(BrokenFile.of("house", from, to, fragments));
    }

    static List<BrokenFile> all() {
        return List.copyOf(ALL);
    }

    static {
        broken("rules: iec-62353-2014", "rules: §iec-62353-2015", "did you mean 'iec-62353-2014'?");
        broken(
                "rules: iec-62353-2014",
                "rules: bonding\nwhere: §uk-imaging-rom",
                "'uk-imaging-rom' is no circumstance that a rule set lists; did you mean 'uk-imaging-room'?");
        // Known to the data, but nothing that a house could stand in.
        broken(
                "rules: iec-62353-2014",
                "rules: iec-60601-1-ed2\nwhere: §notes-2-and-4",
                "'notes-2-and-4' is no circumstance that a rule set lists");
        broken(
                "tighter: []",
                "tighter: [{limit: §iec-62353-earth-crd, at-most: 80 mohm, because: y}]",
                "'iec-62353-earth-crd' is no limit of any rule set; did you mean 'iec-62353-earth-cord'?");
        broken(
                "tighter: []",
                "tighter: [{limit: iec-62353-earth-cord, at-most: §101 mohm, because: y}]",
                "'101 mohm' is looser: the limit is at-most 100 mohm. A house may tighten a limit, never loosen one");
        broken(
                "tighter: []",
                "tighter: [{limit: iec-62353-earth-cord, at-least: §90 mohm, because: y}]",
                "the limit is at-most 100 mohm; write 'at-most'");
        broken(
                "tighter: []",
                "tighter: [{limit: iec-62353-insulation-mains-to-earth, at-least: §1 Mohm, because: y}]",
                "'1 Mohm' is looser: the limit is at-least 2 Mohm");
        broken(
                "tighter: []",
                "tighter: [{limit: iec-62353-earth-cord, at-most: §40 uA, because: y}]",
                "unit 'uA' is not one for this value; use uohm");
        broken(
                "confirmed: []",
                "confirmed: [{limit: §cord, edition: \"2014\", by: y, date: 2027-01-10}]",
                "'cord' is no limit of any rule set");
        broken("rules: iec-62353-2014", "rules: §[iec-62353-2014]", "'rules' is a list; text is due");
        broken("methods: [direct, alternative, differential]", "methods: [§indirect]", "did you mean 'direct'?");
        broken("methods: [direct, alternative, differential]", "methods: §[]", "'methods' lists none");
        broken("insulation: never", "insulation: §sometimes", "known: never, after-repair, always");
        broken("labels: iec", "labels: §ahha", "did you mean 'aha'?");
        broken("paper: a4", "paper: §a3", "did you mean 'a4'?");
        broken("words: earth", "words: §grond", "did you mean 'ground'?");
        broken("aim: hookups", "aim: §hook-ups", "did you mean 'hookups'?");
        broken("paper: a4", "paper: a4\nfloat-joined: §nevr", "'nevr' is not a word");
        broken("replug-under-power: never", "replug-under-power: §no", "'no' is not a word");
        broken("capacitance-share: 10 %", "capacitance-share: §10", "'10' has no unit; write for instance '10 %'");
        broken("capacitance-share: 10 %", "capacitance-share: §150 %", "more than the whole limit");
        broken(
                "times: {snap: {join: 6 s, part: 3 s}, clip: 10 s}",
                "times: {§clipp: 10 s}",
                "unknown key 'clipp'; did you mean 'clip'?");
        broken("clip: 10 s", "clip: §10", "'10' has no unit; write for instance '10 s'");
        broken("clip: 10 s", "clip: §{join: 1 s}", "'clip' is a section with keys; a quantity such as '1 s' is due");
        broken("snap: {join: 6 s, part: 3 s}", "snap: §6 s", "'snap' is text; a section with keys is due");
        broken("part: 3 s}", "§prat: 3 s}", "unknown key 'prat'; did you mean 'part'?");
        broken(
                "tighter: []",
                "tighter: [§{limit: iec-62353-earth-cord, because: y}]",
                "key 'at-most' or 'at-least' is missing");
        broken(
                "tighter: []",
                "tighter: [§{limit: iec-62353-earth-cord, at-most: 1 mohm, at-least: §1 mohm, because: y}]",
                "not both",
                "write 'at-most'");
        broken("tighter: []", "tighter: [§{limit: iec-62353-earth-cord, at-most: 1 mohm}]", "key 'because' is missing");
        broken("tighter: []", "tighter: [{limit: iec-62353-earth-cord, at-most: §40, because: y}]", "'40' has no unit");
        broken(
                "extra-tests: []",
                "extra-tests: [{quantity: §touch-curent, because: y}]",
                "did you mean 'touch-current'?");
        broken(
                "join-stricter: []",
                "join-stricter: [{type: §CFF, each: connection, because: y}]",
                "'CFF' is not a word for 'type'; known: B, BF, CF");
        broken(
                "join-stricter: []",
                "join-stricter: [{type: CF, each: §wire, because: y}]",
                "known: connection, function");
        broken("signs: [technician]", "signs: §[]", "'signs' lists nobody");
        broken(
                "confirmed: []",
                "confirmed: [{limit: iec-62353-earth-cord, edition: \"2014\", by: y, date: §10 January 2027}]",
                "a date is year-month-day");
        broken(
                "confirmed: []",
                "confirmed: [§{limit: iec-62353-earth-cord, edition: \"2014\", by: y}]",
                "key 'date' is missing; a date such as 2027-05-31 is due");
        broken("decision: simple", "§desicion: simple", "unknown key 'desicion'; did you mean 'decision'?");
        broken("leadwright: house/1", "leadwright: §house-rules/1", "'house-rules/1' is no kind of file");
    }
}
