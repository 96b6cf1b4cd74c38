package leadwright.catalog.read;

import java.util.ArrayList;
import java.util.List;

/** Broken device files: see {@link BrokenFile}. */
final class BrokenDevices {

    private static final List<BrokenFile> ALL = new ArrayList<>();

    private BrokenDevices() {}

    private static void broken(String from, String to, String... fragments) {
        ALL.add(BrokenFile.of("device", from, to, fragments));
    }

    private static void brokenTwice(String from, String to, String from2, String to2, String... fragments) {
        ALL.add(BrokenFile.of("device", from, to, fragments).and(from2, to2));
    }

    static List<BrokenFile> all() {
        return List.copyOf(ALL);
    }

    static {
        // Quantities
        broken("voltage: 230 V", "voltage: §230", "'230' has no unit; write for instance '230 V'");
        broken("voltage: 230 V", "voltage: §230 W", "unit 'W' is not one for this value; use uV, mV, V, kV");
        broken("voltage: 230 V", "voltage: §240-100 V", "the range runs downwards; write the lower value first");
        broken("voltage: 230 V", "voltage: §100-240 Ω", "use uV, mV, V, kV");
        broken("voltage: 230 V", "voltage: §0 V", "'voltage' is zero");
        broken("voltage: 230 V", "voltage: §[230 V]", "'voltage' is a list; a quantity such as '1 V' is due");
        broken("current: 0.6 A", "current: §0,6 A", "has a comma; decimals are written with a point");
        broken("current: 0.6 A", "current: §-0.6 A", "'-0.6 A', less than nothing");
        broken("start-up: 75 s", "start-up: §75", "'75' has no unit; write for instance '75 s'");
        broken("start-up: 75 s", "start-up: §soon", "'soon' is not a number with its unit, such as '1 s'");
        broken("start-up: 75 s", "start-up: §30 h", "longer than a day; at most 24 h");
        broken("distance: 0.5 m", "distance: §0.5", "'0.5' has no unit; write for instance '0.5 m'");
        broken("start-up: 75 s", "start-up:§ ", "'start-up' has no value; a quantity such as '1 s' is due");

        // Words
        broken(
                "protection: class-1",
                "protection: §class-3",
                "'class-3' is not a word for 'protection'; known: class-1, class-2, internally-powered");
        broken("protection: class-1", "protection: §class_2", "known: class-1, class-2, internally-powered");
        broken("battery: backs-up", "battery: §backup", "did you mean 'backs-up'?");
        broken("connection: detachable-cord ", "connection: §detachable ", "did you mean 'detachable-cord'?");
        broken("inlet: iec-60320-c14", "inlet: §iec-60320-c15", "did you mean 'iec-60320-c1");
        broken("cord-plug: bs-1363", "cord-plug: §bs1363", "did you mean 'bs-1363'?");
        broken("type: CF   ", "type: §cf   ", "'cf' is not a word for 'type'; known: B, BF, CF");
        broken("set: ecg-10", "set: §ecg-11", "did you mean 'ecg-10'?");
        broken("terminal: snap-socket", "terminal: §snap-soket", "did you mean 'snap-socket'?");
        broken(
                "terminal: skin-surface",
                "terminal: §banana",
                "'banana' is not a word for 'terminal'; no known word is near it");
        broken("defibrillation-proof: true", "defibrillation-proof: §maybe", "known: yes, no");
        broken(
                "tolerates-power-cut: yes",
                "tolerates-power-cut: §1",
                "'1' is not a word for 'tolerates-power-cut'; known: yes, no");
        broken("earthed: no}", "earthed: §unkown}", "did you mean 'unknown'?");
        broken("surface: metal,", "surface: §mettal,", "did you mean 'metal'?");

        // Keys
        broken(
                "mains-switch: both-poles",
                "§mains-swich: both-poles",
                "unknown key 'mains-swich'; did you mean 'mains-switch'?");
        broken(
                "battery: backs-up",
                "§colour: blue",
                "unknown key 'colour'; known: leadwright, name, supply, protection");
        broken("  frequency: 50 Hz", "  §frequenzy: 50 Hz", "unknown key 'frequenzy'; did you mean 'frequency'?");
        broken(
                "name: Network}",
                "name: Network, §speed: fast}",
                "unknown key 'speed'; known: id, terminal, surface, name");
        broken(
                "battery: backs-up",
                "§protection: class-2",
                "key 'protection' stands twice, first in line 11; keep one");
        broken("name: Brindlewick ward monitor", "name: §\"\"", "'name' is empty");
        broken("name: Brindlewick ward monitor", "name: §[a]", "'name' is a list; text is due");
        broken("name: Brindlewick ward monitor", "name: §~", "'name' has no value; text is due");
        broken("name: Brindlewick ward monitor", "name: §true", "put it in quotes if it is a word");

        broken(
                "  - id: ibp\n    name: Invasive pressure, 2 channels\n    type: CF\n",
                "  - §id: ibp\n",
                "key 'type' is missing; B, BF or CF is due");
        brokenTwice(
                "  - id: spo2\n    name: Pulse oximetry",
                "  - §name: Pulse oximetry",
                "[ecg, spo2, ibp]",
                "[ecg, ibp]",
                "key 'id' is missing");
        brokenTwice(
                "  connection: ",
                "  §connection: ",
                "  voltage: 230 V",
                "  #",
                "key 'voltage' is missing; the rated voltage is due");

        // Ids and references
        broken(
                "  - id: ibp\n",
                "  - id: ibp\n    type: B\n    set: ecg-3\n    terminal: tab\n  - id: §ibp\n",
                "id 'ibp' stands twice, first in line 32; each applied part has an id of its own");
        broken("id: bezel-screw", "id: §pole-clamp", "id 'pole-clamp' stands twice");
        broken("id: stud,", "id: §lan,", "id 'lan' stands twice, first in line 39");
        broken("{id: p2,", "{id: §p1,", "id 'p1' stands twice");
        broken(
                "{id: sensor, terminal: skin-surface}",
                "{id: s, terminal: tab}\n      - {id: §s, terminal: tab}",
                "id 's' stands twice");
        broken(
                "    terminal: snap-socket",
                "    terminal: snap-socket\n    connections: [{id: §R}]",
                "id 'R' stands twice");
        broken("id: lan,", "id: §my lan,", "'my lan' is no id");
        broken("id: lan,", "id: §a.b,", "'a.b' is no id");
        brokenTwice(
                "- id: spo2",
                "- id: §housing",
                "[ecg, spo2, ibp]",
                "[ecg, housing, ibp]",
                "'housing' begins the names of other connections");
        broken(
                "panel: [ecg, spo2, ibp]",
                "panel: [ecg, §sp02, ibp]",
                "'sp02' is no applied part of this file; did you mean 'spo2'?");
        broken("panel: [ecg, spo2, ibp]", "panel: [ecg, spo2, §ecg]", "'ecg' stands twice in 'panel'");
        broken(
                "distance: 0.5 m}",
                "distance: 0.5 m, from: §bezel}",
                "'bezel' is no touch point or earth point of this file; known: pole-clamp, bezel-screw, stud");
        broken("earthed: no}", "earthed: no, from: §pole-clamp}", "'from' needs 'distance'");
        broken("distance: 0.5 m}", "distance: 0.5 m, from: §pole-clamp}", "run in a circle");

        // Applied parts
        brokenTwice(
                "set: ecg-10", "set: §ecg-10", "    terminal: snap-socket", "    #", "set 'ecg-10' needs 'terminal'");
        broken("      - {id: sensor, terminal: skin-surface} ", "      - §{id: sensor}", "key 'terminal' is missing");
        broken(
                "    connections:\n      - {id: sensor, terminal: skin-surface}",
                "    connections: §[]",
                "has no connection; write 'set'");
        broken("    functions: ", "    set: §eeg-21\n    functions: ", "'set' does not go with 'functions'");
        broken("outputs: []", "outputs: §none", "'outputs' is text; a list is due, [] where there is none");

        // Outputs
        broken(
                "outputs: []",
                "outputs: [{id: §shock, kind: pacing}]",
                "'shock' is no applied part of this file; name one with 'applied-part'");
        broken("outputs: []", "outputs: [{id: ecg, kind: §pacin}]", "did you mean 'pacing'?");
        broken(
                "outputs: []",
                "outputs: [{id: x, applied-part: §ecq, kind: rf}]",
                "'ecq' is no applied part of this file; did you mean 'ecg'?");
        broken(
                "outputs: []",
                "outputs: [{id: ibp, functions: [§p3], kind: rf}]",
                "'p3' is no function of 'ibp' of this file; did you mean 'p1'?");
        broken(
                "outputs: []",
                "outputs: [{id: ecg, functions: [§p1], kind: rf}]",
                "'p1' is no function of 'ecg' of this file; the file lists none");
        broken(
                "outputs: []",
                "outputs: [{id: ecg, kind: rf, wait: §60}]",
                "'60' has no unit; write for instance '60 s'");
        broken("outputs: []", "outputs: [{id: ecg, kind: rf, may-share: §''}]", "'may-share' is empty");

        // The rest of the sections
        broken("forbids: []", "forbids: [{test: §insulation, because: no}]", "'insulation' is not a word for 'test'");
        broken("forbids: []", "forbids: [§{test: insulation-resistance}]", "key 'because' is missing");
        broken(
                "limits: []",
                "limits: [{quantity: touch-current, at-most: §300 ohm, source: x}]",
                "unit 'ohm' is not one for this value; use nA, uA, mA, A");
        broken(
                "limits: []",
                "limits: [{quantity: §touch-curent, at-most: 300 uA, source: x}]",
                "did you mean 'touch-current'?");
        broken(
                "limits: []",
                "limits: [{quantity: §insulation-resistance, at-most: 2 Mohm, source: x}]",
                "has no greatest value to limit");
        broken(
                "limits: []",
                "limits: [{quantity: patient-leakage, of: §egc, at-most: 9 uA, source: x}]",
                "'egc' is no applied part, touch point or port of this file; did you mean 'ecg'?");
        broken("limits: []", "limits: [§{quantity: patient-leakage, at-most: 9 uA}]", "key 'source' is missing");
        broken("limits: []", "limits: [§{quantity: patient-leakage, source: x}]", "key 'at-most' is missing");
        broken(
                "electrical: {}",
                "electrical: {§line-erth: 2.2 nF}",
                "unknown key 'line-erth'; did you mean 'line-earth'?");
        broken("electrical: {}", "electrical: {line-earth: §2.2}", "'2.2' has no unit");
        broken("electrical: {}", "electrical: {earth-path: §2.2 nF}", "use uohm, mohm, ohm, kohm, Mohm, Gohm");
        broken("electrical: {}", "modes: [{id: a}, {id: §a}]", "id 'a' stands twice");
        broken("electrical: {}", "modes: [{id: a, reach: §90}]", "'90' has no unit");
        broken("electrical: {}", "adapter: §{class: class-2}", "supply.connection is detachable-cord");
        broken(
                "electrical: {}",
                "connectors: [{id: §snap-stud, mates: []}]",
                "connector 'snap-stud' is the catalog's own");
        broken("electrical: {}", "connectors: [{id: own, mates: [§snap-stubs]}]", "did you mean 'snap-stud'?");
        broken(
                "name: Network}",
                "name: Network, terminal: tab, surface: §metal}",
                "'surface' does not go with 'terminal'");

        // Contradictions
        broken(
                "connection: detachable-cord   # detachable-cord | fixed-cord | permanent | external-adapter | none\n  inlet: iec-60320-c14\n  cord-plug: bs-1363",
                "connection: permanent\n  inlet: §iec-60320-c14\n  cord-plug: §bs-1363",
                "'inlet' does not go with connection permanent",
                "'cord-plug' does not go with connection permanent");
        brokenTwice(
                "connection: detachable-cord ",
                "connection: fixed-cord ",
                "inlet: ",
                "inlet: §",
                "'inlet' does not go with connection fixed-cord; take it out, or write detachable-cord there");
        broken("protection: class-1", "protection: §internally-powered", "is class-1 or class-2 while it is");
        broken("inlet: iec-60320-c14", "inlet: §iec-60320-c8", "no earth pin, so the device cannot be class-1");
        broken("cord-plug: bs-1363", "cord-plug: §cee-7-16", "no earth pin, so the device cannot be class-1");

        // Kind of file
        broken(
                "leadwright: device/1",
                "leadwright: §kit/1",
                "this is a kit ('kit/1') where a device (device/1) is due");
        broken(
                "leadwright: device/1",
                "leadwright: §system/1",
                "this is a system ('system/1'); this version plans single devices");
        broken(
                "leadwright: device/1",
                "leadwright: §device/2",
                "version '/2' of a device is not known to this program; it reads device/1");
        broken("leadwright: device/1", "leadwright: §device", "of a device is not known");
        broken(
                "leadwright: device/1",
                "leadwright: §gadget/1",
                "'gadget/1' is no kind of file; write 'leadwright: device/1'");
        broken("leadwright: device/1", "§leadwrigt: device/1", "did you mean 'leadwright'?");
        broken(
                "leadwright: device/1\nname: Brindlewick ward monitor",
                "name: x\n§leadwright: device/1",
                "is the first key of the file");
        broken("leadwright: device/1\n", "§", "the kind of file is missing; the first line is 'leadwright: device/1'");
        broken("leadwright: device/1", "leadwright: §[device/1]", "the first line is 'leadwright: device/1'");
    }
}
