package leadwright.planner.compare;

import java.time.LocalDate;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import leadwright.catalog.house.DecisionRule;
import leadwright.catalog.house.EarthWord;
import leadwright.catalog.text.Document;
import leadwright.catalog.text.Fields;
import leadwright.catalog.text.Outcome;
import leadwright.planner.Plan;
import leadwright.planner.file.Given;
import leadwright.planner.file.PlanParts;
import leadwright.planner.plan.Bundle;
import leadwright.planner.plan.Chain;
import leadwright.planner.plan.EarthPath;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.NotApplicable;
import leadwright.planner.plan.Proof;
import leadwright.planner.plan.Reading;
import leadwright.planner.plan.Shortfall;
import leadwright.planner.plan.Step;
import leadwright.planner.plan.TimeSplit;

/** Reads what comparing needs of a {@code plan/1} that this program wrote. */
public final class SideFile {

    private final Given top;

    private SideFile(Given top) {
        this.top = top;
    }

    /**
     * Reads a plan.
     *
     * @param file name of the file, for messages
     */
    public static Outcome<Side> read(String file, byte[] bytes) {
        return Document.readWritten(file, bytes, "plan/1", (Fields fields) -> new SideFile(new Given(fields)).side());
    }

    private Supplier<Side> side() {
        String fingerprint = top.text("fingerprint");
        if (fingerprint.length() < 8) {
            top.problem("fingerprint", "the fingerprint is not whole; make the plan anew");
        }
        String occasion = top.text("occasion");
        Optional<LocalDate> on = top.date("on");
        List<String> warnings = top.texts("warnings");
        boolean partial = top.yes("partial");
        boolean training = top.yes("training-copy");
        Optional<Side.Device> device = top.due("device").map(SideFile::device);
        Optional<Side.Bench> bench = top.due("kit").map(SideFile::bench);
        Optional<Plan.RulesInfo> rules = top.due("rules")
                .map(each -> new Plan.RulesInfo(each.text("id"), each.text("name"), each.text("edition")));
        Optional<Side.House> house = top.due("house").map(SideFile::house);
        List<Hookup> hookups = list("hookups").stream().map(SideFile::hookup).toList();
        Set<String> hookupIds = ids("hookups");
        Set<String> readingIds = ids("readings");
        List<Supplier<Reading>> readings =
                list("readings").stream().map(ReadingRow::reading).toList();
        list("readings").forEach(row -> known(row, "hookup", hookupIds));
        List<Supplier<Step>> steps = list("steps").stream().map(StepRow::step).toList();
        list("steps").forEach(row -> known(row, "hookup", hookupIds));
        taken(readingIds);
        List<NotApplicable> notApplicable = PlanParts.notApplicable(top);
        List<Shortfall> shortfalls = PlanParts.shortfalls(top);
        Optional<TimeSplit> time = top.due("time").map(SideFile::time);
        Optional<Given> proof = top.due("proof");
        Optional<Proof> hookupsProof =
                proof.flatMap(each -> each.due("hookups")).map(SideFile::proof);
        Optional<Proof> timeProof = proof.flatMap(each -> each.due("time")).map(SideFile::proof);
        return () -> new Side(
                fingerprint,
                partial,
                training,
                device.orElseThrow(),
                bench.orElseThrow(),
                rules.orElseThrow(),
                occasion,
                on,
                house.orElseThrow(),
                hookups,
                readings.stream().map(Supplier::get).toList(),
                steps.stream().map(Supplier::get).toList(),
                notApplicable,
                shortfalls,
                warnings,
                time.orElseThrow(),
                hookupsProof.orElseThrow(),
                timeProof.orElseThrow());
    }

    /** Rows of a list that the file cannot do without, though it may be empty. */
    private List<Given> list(String key) {
        if (!top.has(key)) {
            top.missing(key);
        }
        return top.rows(key);
    }

    private Set<String> ids(String key) {
        Set<String> ids = new HashSet<>();
        for (Given row : top.rows(key)) {
            if (!ids.add(row.text("id"))) {
                row.problem("id", "'" + row.text("id") + "' stands twice in '" + key + "'; plan again");
            }
        }
        return ids;
    }

    private static void known(Given row, String key, Set<String> ids) {
        row.maybe(key)
                .filter(id -> !ids.contains(id))
                .ifPresent(id -> row.problem(key, "the plan has no " + key + " '" + id + "'; plan again"));
    }

    /** Every reading is taken by exactly one step. */
    private void taken(Set<String> readings) {
        Set<String> taken = new HashSet<>();
        for (Given row : top.rows("steps")) {
            known(row, "reading", readings);
            row.maybe("reading")
                    .filter(id -> !taken.add(id))
                    .ifPresent(id -> row.problem("reading", "reading '" + id + "' is taken twice; plan again"));
        }
        for (Given row : top.rows("readings")) {
            if (!taken.contains(row.text("id"))) {
                row.problem("id", "no step takes the reading '" + row.text("id") + "'; plan again");
            }
        }
    }

    private static Side.Device device(Given device) {
        Map<String, String> places = new LinkedHashMap<>();
        device.rows("places").forEach(each -> places.put(each.text("id"), each.text("name")));
        List<Side.Part> parts = device.rows("applied-parts").stream()
                .map(each ->
                        new Side.Part(each.text("id"), each.text("name"), each.text("type"), each.texts("connections")))
                .toList();
        return new Side.Device(device.text("name"), device.text("protection"), parts, places);
    }

    private static Side.Bench bench(Given kit) {
        return new Side.Bench(
                kit.text("name"),
                kit.text("tester"),
                kit.date("calibrated-until"),
                PlanParts.accuracy(kit),
                kit.section("mains-on-applied-part").flatMap(PlanParts::source));
    }

    private static Side.House house(Given house) {
        return new Side.House(
                house.maybe("department"),
                house.word("decision", DecisionRule.class).orElse(DecisionRule.SIMPLE),
                house.word("words", EarthWord.class).orElse(EarthWord.EARTH),
                house.texts("signs"));
    }

    private static Hookup hookup(Given row) {
        List<Bundle> bundles = row.rows("bundles").stream()
                .map(each -> new Bundle(
                        each.text("id"), each.texts("connections"), each.wholes("jacks"), each.texts("links")))
                .toList();
        List<Chain> chains = row.rows("chains").stream()
                .map(each -> new Chain(
                        each.text("connection"), each.texts("items"), each.whole("jack"), each.whole("contacts")))
                .toList();
        List<EarthPath> earth = row.rows("earth").stream()
                .map(each ->
                        new EarthPath(each.text("pole"), each.text("point"), each.text("socket"), each.texts("items")))
                .toList();
        return new Hookup(row.text("id"), bundles, chains, earth);
    }

    private static TimeSplit time(Given time) {
        Map<Step.Account, Integer> parts = new EnumMap<>(Step.Account.class);
        for (Step.Account each : Step.Account.values()) {
            parts.put(each, time.whole(each.word()));
        }
        return new TimeSplit(time.whole("total"), parts, time.whole("plain-order"), time.whole("start-ups"));
    }

    private static Proof proof(Given proof) {
        return new Proof(proof.whole("answer"), proof.whole("lower-bound"), proof.text("argument"));
    }
}
