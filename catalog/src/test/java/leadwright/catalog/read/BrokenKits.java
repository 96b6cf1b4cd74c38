package leadwright.catalog.read;

import java.util.ArrayList;
import java.util.List;

/** Broken kit files: see {@link BrokenFile}. */
final class BrokenKits {

    private static final List<BrokenFile> ALL = new ArrayList<>();

    private BrokenKits() {}

    private static void broken(String from, String to, String... fragments) {
        ALL.add(BrokenFile.of("kit", from, to, fragments));
    }

    private static void brokenTwice(String from, String to, String from2, String to2, String... fragments) {
        ALL.add(BrokenFile.of("kit", from, to, fragments).and(from2, to2));
    }

    static List<BrokenFile> all() {
        return List.copyOf(ALL);
    }

    static {
        // Items
        broken("stock: 10", "stock: §-1", "'stock' is -1; a whole number from 0 to 10000 is due");
        broken("stock: 10", "stock: §1.5", "'stock' is '1.5'; a whole number from 0 to 10000 is due");
        broken("stock: 10", "stock: §\"10\"", "'stock' is '10'; a whole number from 0 to 10000 is due, without quotes");
        broken("stock: 10", "stock: §10 pieces", "without quotes or unit");
        broken("stock: 10", "stock: §99999999999999999999", "a whole number from 0 to 10000 is due");
        broken(
                "- {id: press-pin, kind: adapter, ends: [snap-stud, lab-4mm-plug-shrouded], voltage: 600 V, stock: 10",
                "- §{id: press-pin, kind: adapter, ends: [snap-stud, lab-4mm-plug-shrouded], voltage: 600 V",
                "key 'stock' is missing; a whole number is due");
        broken("id: needle", "id: §jaw", "id 'jaw' stands twice, first in line 27; each item has an id of its own");
        broken("kind: fan-out", "kind: §fanout", "'fanout' is not a word for 'kind'; did you mean 'fan-out'?");
        broken("kind: adapter", "kind: §banana", "known: adapter, fan-out, lead, clip, probe, contact-aid");
        broken(
                "ends: [snap-stud, lab-4mm-plug-shrouded]",
                "ends: [snap-stud, §lab-4mm-plug-shroudet]",
                "did you mean 'lab-4mm-plug-shrouded'?");
        broken(
                "ends: [snap-stud, lab-4mm-plug-shrouded]",
                "ends: §[snap-stud]",
                "'ends' lists 1; exactly two ends are due");
        broken(
                "ends: [snap-stud, lab-4mm-plug-shrouded]",
                "ends: §[snap-stud, tab, tab]",
                "'ends' lists 3; exactly two ends are due");
        broken(
                "{id: press-pin, kind: adapter, ends: [snap-stud, lab-4mm-plug-shrouded],",
                "§{id: press-pin, kind: adapter,",
                "key 'ends' is missing; a list of two connector words is due");
        broken("branches: 10", "branches: §1", "'branches' is 1; a whole number from 2 to 200 is due");
        broken(
                "branches: 10, ",
                "branches: 10, ends: §[tab, tab], ",
                "'ends' does not belong here: a fan-out has 'trunk', 'branch' and 'branches'");
        broken("trunk: lab-4mm-plug-shrouded, ", "trunk: §lab-4mm-plg, ", "did you mean 'lab-4mm-plug'?");
        broken(
                "kind: adapter, ",
                "kind: adapter, branches: §4, ",
                "'branches' does not belong here: only a fan-out has it");
        broken("kind: adapter, ", "kind: adapter, also: §[tab], ", "'also' does not belong here");
        broken("also: [recessed-pin]", "also: [§recesed-pin]", "did you mean 'recessed-pin'?");
        broken(
                "price: 4 GBP",
                "price: §4",
                "'4' has no currency; an amount and a currency code are due, such as '4 GBP'");
        broken("price: 4 GBP", "price: §four pounds", "'four pounds' is no price");
        broken("price: 4 GBP", "price: §-4 GBP", "'-4 GBP' is no price");
        broken("conductor: 1.5 mm2", "conductor: §1.5", "'1.5' has no unit; write for instance '1.5 mm2'");
        broken("conductor: 1.5 mm2", "conductor: §AWG 99", "'AWG 99' is not in the conductor table");
        broken(
                "capacitance: 60 pF/m",
                "capacitance: §60 pF",
                "unit 'pF' is not one for this value; use fF/m, pF/m, nF/m");
        broken("voltage: 600 V", "voltage: §0 V", "'voltage' is zero");
        broken("current: 25 A", "current: §25", "'25' has no unit; write for instance '25 A'");
        broken("length: 1.5 m", "§lenght: 1.5 m", "unknown key 'lenght'; did you mean 'length'?");
        broken("length: 1.5 m", "length: §1.5 metres", "unit 'metres' is not one for this value; use um, mm, cm, m");

        // The tester
        broken("count: 6", "count: §0", "'count' is 0; a whole number from 1 to 100 is due");
        broken(
                "socket: lab-4mm-socket-recessed, ties",
                "socket: §lab-4mm-socket-recess, ties",
                "did you mean 'lab-4mm-socket-recessed'?");
        broken("ties: runs", "ties: §run", "did you mean 'runs'?");
        broken("at-rest: open}", "at-rest: §grounded}", "known: open, earthed, chosen");
        broken("touch-through: jack ", "touch-through: §jacks ", "did you mean 'jack'?");
        brokenTwice(
                "  jacks: {count: 6, socket: lab-4mm-socket-recessed, ties: runs, at-rest: open}",
                "",
                "touch-through: jack",
                "touch-through: §jack",
                "the tester lists no 'jacks'");
        broken("inlet: {plug: bs-1363", "inlet: {plug: §bs-1364", "did you mean 'bs-1363'?");
        broken("inlet: {plug: bs-1363, current: 13 A}", "inlet: §{plug: bs-1363}", "key 'current' is missing");
        broken(
                "- {socket: bs-1363, system: line-neutral, voltage: 230 V, current: 13 A}",
                "- {socket: bs-1363, voltage: §230, current: 13 A}",
                "'230' has no unit");
        broken("switches: [earth, supply, polarity]", "switches: [earth, §suply]", "did you mean 'supply'?");
        broken(
                "switches: [earth, supply, polarity]",
                "switches: §earth",
                "'switches' is text; a list is due, [] where there is none");
        broken("networks: [iec-60601]", "networks: [§iec-60602]", "did you mean 'iec-60601'?");
        broken("methods: [direct, alternative]", "methods: [direct, §direct]", "'direct' stands twice in 'methods'");
        broken("components: [ac, dc]", "components: [§AC]", "did you mean 'ac'?");
        broken("currents: [200 mA, 10 A]", "currents: §[]", "'currents' lists none");
        broken("currents: [200 mA, 10 A]", "currents: [§200, 10 A]", "'200' has no unit");
        broken("source: ac,", "source: §a.c.,", "'a.c.' is not a word for 'source'");
        broken("wiring: two-wire", "wiring: §2-wire", "'2-wire' is not a word for 'wiring'");
        broken(
                "sockets: [earth-jack, outlet-earth]",
                "sockets: §[earth-jack]",
                "'sockets' names fewer than two places");
        broken(
                "sockets: [earth-jack, outlet-earth]",
                "sockets: [earth-jack, §outlet]",
                "known: earth-jack, outlet-earth, second-jack");
        brokenTwice(
                "outlets:\n    - {socket: bs-1363, system: line-neutral, voltage: 230 V, current: 13 A}",
                "outlets: []",
                "sockets: [earth-jack, outlet-earth]",
                "sockets: §[earth-jack, outlet-earth]",
                "'outlet-earth' is named, but the tester has no outlet");
        broken("insulation: [500 V]", "insulation: [§500]", "'500' has no unit");
        broken(
                "mains-on-applied-part: {voltage: 230 V, short-circuit: 3.5 mA, reading: corrected}",
                "mains-on-applied-part: §yes",
                "says yes; write its voltage, short-circuit and reading instead");
        broken(
                "mains-on-applied-part: {voltage: 230 V, short-circuit: 3.5 mA, reading: corrected}",
                "mains-on-applied-part: §nope",
                "'nope' is not a word");
        broken("reading: corrected", "reading: §correct", "did you mean 'corrected'?");
        broken(
                "leakage: {reading: 1 %, floor: 1 uA}",
                "leakage: {reading: §1, floor: 1 uA}", "'1' has no unit; write for instance '1 %'");
        broken("leakage: {reading: 1 %, floor: 1 uA}", "leakage: {reading: 1 %, floor: §1 mohm}", "use nA, uA, mA, A");
        broken("    earth: {reading", "    §erth: {reading", "unknown key 'erth'; did you mean 'earth'?");
        broken("calibrated-until: 2027-05-31", "calibrated-until: §2027-02-30", "there is no day '2027-02-30'");
        broken(
                "calibrated-until: 2027-05-31",
                "calibrated-until: §31.05.2027",
                "a date is year-month-day, for instance 2027-05-31");
        broken("calibrated-until: 2027-05-31", "calibrated-until: §2027", "a date is year-month-day");

        // The rest
        broken("value: 2.3 Mohm", "value: §2.3", "'2.3' has no unit; write for instance '2.3 ohm'");
        broken("tolerance: 5 %", "tolerance: §5", "'5' has no unit; write for instance '5 %'");
        broken(
                "checks:  ",
                "connectors: [{id: own, mates: [§lab-4mm-sokket], current: §1}]\nchecks:  ",
                "did you mean 'lab-4mm-socket'?",
                "'1' has no unit");
        broken(
                "leadwright: kit/1",
                "leadwright: §device/1",
                "this is a device ('device/1') where a kit (kit/1) is due");
    }
}
