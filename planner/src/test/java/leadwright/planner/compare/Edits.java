package leadwright.planner.compare;

import static leadwright.planner.compare.SmallPlan.inLine;
import static leadwright.planner.compare.SmallPlan.with;
import static leadwright.planner.compare.SmallPlan.without;

import java.util.List;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;

/** One change by hand for every kind of change, and all that is then to be said, nothing else. */
final class Edits {

    private Edits() {}

    /**
     * @param change what is done to the text of {@link SmallPlan}
     * @param sentences of the whole comparison
     */
    record Edit(Kind kind, UnaryOperator<String> change, List<String> sentences) {
        @Override
        public String toString() {
            return kind.word() + ": " + sentences.get(0);
        }

        Side side() {
            return SmallPlan.side(change.apply(SmallPlan.text()));
        }
    }

    private static Edit replaced(Kind kind, String piece, String instead, String... sentences) {
        return new Edit(kind, text -> with(text, piece, instead), List.of(sentences));
    }

    private static Edit line(Kind kind, String line, String piece, String instead, String... sentences) {
        return new Edit(kind, text -> inLine(text, line, piece, instead), List.of(sentences));
    }

    private static Edit changed(Kind kind, UnaryOperator<String> change, String... sentences) {
        return new Edit(kind, change, List.of(sentences));
    }

    static Stream<Edit> all() {
        return Stream.of(plannedFor(), hazards(), limits(), tests(), wiring(), order(), time())
                .flatMap(each -> each);
    }

    private static Stream<Edit> plannedFor() {
        return Stream.of(
                replaced(
                        Kind.DEVICE,
                        "Brindlewick ward",
                        "Brindlewick bedside",
                        "device: now Brindlewick bedside monitor; was Brindlewick ward monitor"),
                replaced(Kind.PROTECTION, "class-1\"", "class-2\"", "protection: now class-2; was class-1"),
                replaced(
                        Kind.APPLIED_PART,
                        "\"applied-parts\": [",
                        "\"applied-parts\": [{\"id\": \"temp\", \"name\": \"Temperature\", \"type\": \"CF\","
                                + " \"connections\": [\"temp.probe\"]}, ",
                        "applied part temp (Temperature) came in"),
                replaced(
                        Kind.APPLIED_PART,
                        "Pulse oximetry",
                        "Oximetry",
                        "applied part spo2 is called Oximetry now, was Pulse oximetry"),
                replaced(Kind.PART_TYPE, "\"BF\"", "\"CF\"", "applied part spo2 is of type CF now, was BF"),
                line(
                        Kind.PART_CONNECTIONS,
                        "\"device\"",
                        "\"ecg.L\", ",
                        "\"ecg.N\", \"ecg.C1\", ",
                        "applied part ecg: ecg.N, ecg.C1 came in; ecg.L went"),
                replaced(
                        Kind.KIT,
                        "\"Marrowgate bench\"",
                        "\"Marrowgate trolley\"",
                        "kit: now Marrowgate trolley; was Marrowgate bench"),
                replaced(
                        Kind.TESTER,
                        "Marrowgate bench tester",
                        "Other tester",
                        "tester: now Other tester; was Marrowgate bench tester"),
                replaced(
                        Kind.CALIBRATION,
                        "2027-08-31",
                        "2028-08-31",
                        "tester calibrated until: now 2028-08-31; was 2027-08-31"),
                replaced(
                        Kind.RULES,
                        "\"2014\"",
                        "\"2030\"",
                        "rule set: now IEC 62353, recurrent test and test after repair, edition 2030 (iec-62353-2014); was IEC 62353, recurrent test and test after repair, edition 2014 (iec-62353-2014)"),
                replaced(
                        Kind.OCCASION,
                        "\"recurrent\"",
                        "\"after-repair\"",
                        "occasion: now after-repair; was recurrent"),
                replaced(Kind.DATE, "\"on\": null", "\"on\": \"2027-01-10\"", "date: now 2027-01-10; was none"),
                replaced(
                        Kind.DEPARTMENT,
                        "\"department\": \"Marrowgate\"",
                        "\"department\": null",
                        "department: now none; was Marrowgate"),
                replaced(
                        Kind.SIGNS,
                        "[\"technician\"]",
                        "[\"technician\", \"second person\"]",
                        "signed by: now technician, second person; was technician"));
    }

    private static Stream<Edit> hazards() {
        return Stream.of(
                replaced(
                        Kind.TRAINING_COPY,
                        "\"training-copy\": false",
                        "\"training-copy\": true",
                        "TRAINING COPY now: no record may rest on it"),
                replaced(
                        Kind.PARTIAL,
                        "\"partial\": false",
                        "\"partial\": true",
                        "PARTIAL now: this kit cannot take every reading that is due"),
                replaced(
                        Kind.SHORTFALL,
                        "\"shortfalls\": []",
                        "\"shortfalls\": [{\"about\": \"comb\", \"connections\": [\"ecg.C1\"], \"because\": \"one too"
                                + " few\", \"additions\": [\"1 comb\"]}]",
                        "falls short now, comb: one too few (ecg.C1); would do: 1 comb"),
                line(
                        Kind.THERAPY_OUTPUT,
                        "make-safe",
                        "output locked",
                        "output open",
                        "therapy output pads is made safe otherwise: now “Make pads safe: energy dumped, output open.”; was “Make pads safe: energy dumped, output locked.”"),
                changed(
                        Kind.THERAPY_OUTPUT,
                        text -> without(text, "make-safe"),
                        "therapy output pads: no step makes it safe any more; was: “Make pads safe: energy dumped, output locked.”",
                        "caution went, was at 1 step: “Pads never touch the jacks while charged.”"),
                changed(
                        Kind.MAINS_ON_PART,
                        text -> without(text, "\"reading\": \"R5\"")
                                .lines()
                                .filter(line -> !line.contains("\"id\": \"R5\""))
                                .reduce("", (one, other) -> one + other + "\n"),
                        "mains is no longer put on Pulse oximetry, was in 1 reading",
                        "1 reading that went, with connections that share a jack while they float",
                        "1 reading went: applied part leakage of Pulse oximetry (reversed, source normal, direct method, ac); at most 5 mA"),
                replaced(
                        Kind.PART_SOURCE,
                        "\"short-circuit\": \"3.5 mA\"",
                        "\"short-circuit\": \"7 mA\"",
                        "source for mains on a part: now 230 V, at most 7 mA, corrected readings; was 230 V, at most 3.5 mA, corrected readings"),
                replaced(
                        Kind.CAUTION,
                        "\"Do not move the clip.\"",
                        "null",
                        "caution went, was at 1 step: “Do not move the clip.”"),
                line(
                        Kind.CAUTION,
                        "\"reading\": \"R4\"",
                        "\"Hands off: mains on the part.\"",
                        "null",
                        "caution went from applied part leakage of ECG (reversed, source reversed, direct method, ac): “Hands off: mains on the part.”"),
                line(
                        Kind.CAUTION,
                        "jack 2.\"",
                        "\"Hands off: mains on the part.\"",
                        "null",
                        "caution went from Select at the tester: jack 2.: “Hands off: mains on the part.”"),
                line(
                        Kind.REPLUG_UNDER_POWER,
                        "Join spo2.sensor",
                        "\"state\": \"off\"",
                        "\"state\": \"normal\"",
                        "plugging under power, mains normal: now 1 step; was none"),
                replaced(
                        Kind.ON_FAIL,
                        "\"If it fails: stop.\"",
                        "\"If it fails: note it.\"",
                        "what to do when it fails, earth resistance of Pole clamp (plug to part): now “If it fails: note it.”; was “If it fails: stop.”"),
                replaced(
                        Kind.WARNING,
                        "[\"the battery keeps the device on\"]",
                        "[\"mind the battery\"]",
                        "note came in: “mind the battery”",
                        "note went: “the battery keeps the device on”"),
                changed(
                        Kind.FLOAT_JOINED,
                        text -> with(
                                text,
                                "\"connections\": [\"ecg.R\", \"ecg.L\", \"ecg.F\"], \"jacks\"",
                                "\"connections\": [\"ecg.R\", \"ecg.L\"], \"jacks\""),
                        "applied part leakage of Pulse oximetry (reversed, source normal, direct method, ac): 2 connections share a jack while they float, were 3 connections"));
    }

    private static Stream<Edit> limits() {
        return Stream.of(
                replaced(
                        Kind.LIMIT,
                        "\"at-most\": \"50 uA\"",
                        "\"at-most\": \"100 uA\"",
                        "RELAXED, 2 readings of applied part leakage: now at most 100 uA (iec-62353-part-direct-cf, Table 3, mark C, unconfirmed); was at most 50 uA (iec-62353-part-direct-cf, Table 3, mark C, unconfirmed)"),
                replaced(
                        Kind.LIMIT,
                        "\"at-most\": \"300 mohm\"",
                        "\"at-most\": \"200 mohm\"",
                        "tightened, earth resistance of Pole clamp (plug to part): now at most 200 mohm (iec-62353-earth-plug-to-part, 5.3.2 a), b), mark B of X353); was at most 300 mohm (iec-62353-earth-plug-to-part, 5.3.2 a), b), mark B of X353)"),
                changed(
                        Kind.LIMIT,
                        text -> text.replaceFirst("\\{\"id\": \"iec-62353-earth[^}]*\\}", "null"),
                        "NO LIMIT any more, earth resistance of Pole clamp (plug to part): now none; was at most 300 mohm (iec-62353-earth-plug-to-part, 5.3.2 a), b), mark B of X353)"),
                replaced(
                        Kind.LIMIT_ORIGIN,
                        "[\"X353\"]",
                        "[\"X353\", \"MG\"]",
                        "same value, resting on something else, earth resistance of Pole clamp (plug to part): now at most 300 mohm (iec-62353-earth-plug-to-part, 5.3.2 a), b), mark B of X353, MG); was at most 300 mohm (iec-62353-earth-plug-to-part, 5.3.2 a), b), mark B of X353)"),
                replaced(
                        Kind.LIMIT_ORIGIN,
                        "\"mark\": \"B\"",
                        "\"mark\": \"A\"",
                        "same value, resting on something else, earth resistance of Pole clamp (plug to part): now at most 300 mohm (iec-62353-earth-plug-to-part, 5.3.2 a), b), mark A of X353); was at most 300 mohm (iec-62353-earth-plug-to-part, 5.3.2 a), b), mark B of X353)"),
                replaced(Kind.DECISION, "\"simple\"", "\"guard-band\"", "decision rule: now guard-band; was simple"),
                replaced(
                        Kind.ACCURACY,
                        "\"floor\": \"1 uA\"",
                        "\"floor\": \"2 uA\"",
                        "accuracy of the tester, leakage: now 1 % and 2 uA; was 1 % and 1 uA"));
    }

    private static Stream<Edit> tests() {
        return Stream.of(
                changed(
                        Kind.READING,
                        text -> without(without(text, "\"id\": \"R2\""), "\"reading\": \"R2\""),
                        "caution went, was at 1 step: “Do not move the clip.”",
                        "1 reading went: earth resistance of Pole clamp (plug to part); at most 300 mohm"),
                line(
                        Kind.TAKEN_OTHERWISE,
                        "\"id\": \"R3\"",
                        "\"method\": \"direct\"",
                        "\"method\": \"differential\"",
                        "applied part leakage of ECG (reversed, source normal, differential method, ac) taken otherwise, method: now differential; was direct"),
                line(
                        Kind.TAKEN_OTHERWISE,
                        "\"id\": \"R3\"",
                        "\"ecg.F\", ",
                        "",
                        "applied part leakage of ECG (reversed, source normal, direct method, ac) taken otherwise, measured connections: ecg.F went"),
                line(
                        Kind.TAKEN_OTHERWISE,
                        "\"id\": \"R3\"",
                        "iec-60601\"",
                        "iec-60990\"",
                        "applied part leakage of ECG (reversed, source normal, direct method, ac) taken otherwise, measuring network: now iec-60990; was iec-60601"),
                line(
                        Kind.CLAUSE,
                        "\"id\": \"R2\"",
                        "\"5.3.2\"",
                        "\"5.3.9\"",
                        "clause of earth resistance of Pole clamp (plug to part): now 5.3.9; was 5.3.2"),
                replaced(
                        Kind.REMARK,
                        "set 200 mA on the tester; ",
                        "set 10 A on the tester; ",
                        "to know of earth resistance of Pole clamp (plug to part): now “set 10 A on the tester”; was “set 200 mA on the tester”"),
                replaced(
                        Kind.NOT_APPLICABLE,
                        "only for permanent plant",
                        "for nothing",
                        "left out for another reason: touch-current, now “asked for nothing”; was “asked only for permanent plant”"),
                changed(
                        Kind.NOT_APPLICABLE,
                        text -> without(text, "\"test\": \"touch-current\""),
                        "no longer left out: touch-current (was: asked only for permanent plant)"));
    }

    private static Stream<Edit> wiring() {
        String second = "{\"id\": \"H2\", \"bundles\": [{\"id\": \"H2.b1\", \"connections\": [\"ecg.R\", \"ecg.L\"],"
                + " \"jacks\": [3], \"links\": []}], \"chains\": [{\"connection\": \"ecg.R\", \"items\": [\"snap-pin/1\","
                + " \"spread/1\"], \"jack\": 3, \"contacts\": 3}, {\"connection\": \"ecg.L\", \"items\": [\"snap-pin/2\","
                + " \"spread/1\"], \"jack\": 3, \"contacts\": 3}], \"earth\": []}";
        return Stream.of(
                changed(
                        Kind.HOOKUP,
                        text -> with(text, "\"hookups\": [\n", "\"hookups\": [\n" + second + ",\n"),
                        "2 hookups, were 1",
                        "hookup H2 came in: jack 3 ecg.R, ecg.L"),
                changed(
                        Kind.TAKEN_IN,
                        text -> inLine(
                                with(text, "\"hookups\": [\n", "\"hookups\": [\n" + second + ",\n"),
                                "\"id\": \"R3\"",
                                "\"H1\"",
                                "\"H2\""),
                        "2 hookups, were 1",
                        "hookup H2 came in: jack 3 ecg.R, ecg.L",
                        "applied part leakage of ECG (reversed, source normal, direct method, ac) taken in another hookup: in H2 of B, was in H1 of A"),
                line(
                        Kind.JACK,
                        "\"chains\"",
                        "\"spread/1\"], \"jack\": 1",
                        "\"spread/1\"], \"jack\": 4",
                        "H1: ecg.F, ecg.L, ecg.R on jack 4, was on jack 1"),
                line(
                        Kind.CHAIN,
                        "\"chains\"",
                        "[\"wrap/1\"]",
                        "[\"wrap/1\", \"lead/1\"]",
                        "H1: spo2.sensor by wrap + lead, was by wrap",
                        "items needed: lead 1 (was none)"),
                line(
                        Kind.LINK,
                        "\"bundles\"",
                        "\"jacks\": [2], \"links\": []",
                        "\"jacks\": [2, 3], \"links\": [\"bridge/1\"]",
                        "H1: jacks 2 and 3 are joined by bridge",
                        "items needed: bridge 1 (was none)"),
                line(
                        Kind.EARTH_LEAD,
                        "\"chains\"",
                        "\"point\": \"pole-clamp\"",
                        "\"point\": \"stud\"",
                        "H1: earth lead to Pole clamp went, was from the earth jack by lead-short + jaw",
                        "H1: earth lead to stud came in, from the earth jack by lead-short + jaw"),
                line(
                        Kind.EARTH_LEAD,
                        "\"chains\"",
                        "lead-short/1",
                        "lead-long/1",
                        "H1: earth lead to Pole clamp: now from the earth jack by lead-long + jaw; was from the earth jack by lead-short + jaw",
                        "items needed: lead-short none (was 1), lead-long 1 (was none)"));
    }

    private static Stream<Edit> order() {
        return Stream.of(
                replaced(Kind.START_UPS, "\"start-ups\": 1", "\"start-ups\": 2", "2 start-ups, were 1"),
                changed(
                        Kind.READING_MOVED,
                        text -> text.replace("\"reading\": \"R4\"", "\"reading\": \"R0\"")
                                .replace("\"reading\": \"R5\"", "\"reading\": \"R4\"")
                                .replace("\"reading\": \"R0\"", "\"reading\": \"R5\""),
                        "applied part leakage of Pulse oximetry (reversed, source normal, direct method, ac) taken earlier"),
                replaced(
                        Kind.INSTRUCTION,
                        "Look the device over.",
                        "Look twice.",
                        "step went: “Look the device over.”",
                        "step came in: “Look twice.”"),
                changed(
                        Kind.ACTS,
                        text -> without(text, "\"text\": \"Outlet off.\""),
                        "numbers of steps: switchings 1 (was 2)"));
    }

    private static Stream<Edit> time() {
        return Stream.of(
                replaced(Kind.TOTAL, "\"total\": 245", "\"total\": 305", "bench time: now 5 min 5 s; was 4 min 5 s"),
                replaced(
                        Kind.SPLIT, "\"start-up\": 60", "\"start-up\": 90", "of that: start-up 1 min 30 s (was 1 min)"),
                replaced(
                        Kind.HOOKUPS_PROOF,
                        "\"answer\": 1, \"lower-bound\": 1",
                        "\"answer\": 2, \"lower-bound\": 1",
                        "proof of the number of hookups: now not proven fewest, at least 1; was proven fewest"),
                replaced(
                        Kind.TIME_PROOF,
                        "\"answer\": 245, \"lower-bound\": 245",
                        "\"answer\": 245, \"lower-bound\": 240",
                        "proof of the bench time: now not proven least, at least 4 min; was proven least"));
    }
}
