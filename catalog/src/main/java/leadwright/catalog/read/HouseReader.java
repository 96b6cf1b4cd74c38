package leadwright.catalog.read;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;
import leadwright.catalog.device.PartType;
import leadwright.catalog.house.Aim;
import leadwright.catalog.house.CapacitanceLimit;
import leadwright.catalog.house.DecisionRule;
import leadwright.catalog.house.EarthWord;
import leadwright.catalog.house.FloatJoined;
import leadwright.catalog.house.House;
import leadwright.catalog.house.InsulationPolicy;
import leadwright.catalog.house.LabelCode;
import leadwright.catalog.house.Paper;
import leadwright.catalog.house.PastDue;
import leadwright.catalog.house.ReplugUnderPower;
import leadwright.catalog.house.Times;
import leadwright.catalog.kit.Method;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.rules.QuantityKind;
import leadwright.catalog.text.Document;
import leadwright.catalog.text.Fields;
import leadwright.catalog.text.Located;
import leadwright.catalog.text.Outcome;

/** Reads {@code house/1} files. */
public final class HouseReader {

    private final Fields top;
    private final House defaults = House.defaults();

    private HouseReader(Fields top) {
        this.top = top;
    }

    /**
     * Reads house rules.
     *
     * @param file name of the file, for messages
     * @param bytes its content, YAML or JSON in UTF-8
     */
    public static Outcome<House> read(String file, byte[] bytes) {
        return Document.read(file, bytes, "house/1", top -> new HouseReader(top).house());
    }

    private Supplier<House> house() {
        String rules = top.assumed("rules", HouseLimits.ruleSet(top), defaults.rules(), "taken as " + defaults.rules());
        List<Method> methods = methods();
        InsulationPolicy insulation =
                word("insulation", InsulationPolicy.values(), InsulationPolicy::word, defaults.insulation());
        LabelCode labels = word("labels", LabelCode.values(), LabelCode::word, defaults.labels());
        Paper paper = word("paper", Paper.values(), Paper::word, defaults.paper());
        EarthWord words = word("words", EarthWord.values(), EarthWord::word, defaults.words());
        Aim aim = word("aim", Aim.values(), Aim::word, defaults.aim());
        ReplugUnderPower replug = word(
                "replug-under-power", ReplugUnderPower.values(), ReplugUnderPower::word, defaults.replugUnderPower());
        Quantity share = share();
        CapacitanceLimit capacitance = word(
                "capacitance-limit", CapacitanceLimit.values(), CapacitanceLimit::word, defaults.capacitanceLimit());
        FloatJoined floatJoined = word("float-joined", FloatJoined.values(), FloatJoined::word, defaults.floatJoined());
        PastDue pastDue = word("past-due", PastDue.values(), PastDue::word, defaults.pastDue());
        DecisionRule decision = word("decision", DecisionRule.values(), DecisionRule::word, defaults.decision());
        Times times = TimesReading.of(top.optionalSection("times"));
        List<House.Tighter> tighter =
                top.rows("tighter").stream().map(HouseLimits::tighter).toList();
        List<House.ExtraTest> extraTests = top.rows("extra-tests").stream()
                .map(row -> new House.ExtraTest(quantity(row), row.text("because")))
                .toList();
        List<House.JoinStricter> joinStricter = top.rows("join-stricter").stream()
                .map(row -> new House.JoinStricter(
                        row.word("type", PartType.values(), PartType::word).word(),
                        row.oneOf("each", List.of("connection", "function")),
                        row.text("because")))
                .toList();
        List<String> signs = signs();
        List<House.Confirmed> confirmed =
                top.rows("confirmed").stream().map(HouseReader::confirmed).toList();
        Optional<String> department = top.optionalText("department");
        Optional<String> where = HouseLimits.where(top);
        return () -> new House(
                rules,
                methods,
                insulation,
                labels,
                paper,
                words,
                aim,
                replug,
                share,
                capacitance,
                floatJoined,
                pastDue,
                decision,
                times,
                tighter,
                extraTests,
                joinStricter,
                signs,
                confirmed,
                department,
                where);
    }

    private <E extends Enum<E>> E word(String key, E[] all, Function<? super E, String> spelling, E otherwise) {
        return top.assumed(
                key, top.optionalWord(key, all, spelling), otherwise, "taken as " + spelling.apply(otherwise));
    }

    private List<Method> methods() {
        List<Method> stated = top.wordList("methods", Method.values(), Method::word);
        if (top.has("methods") && top.items("methods").isEmpty()) {
            top.findings()
                    .problem(top.at("methods"), "'methods' lists none; leave it out, or list the first choice first");
        }
        String words =
                String.join(", ", defaults.methods().stream().map(Method::word).toList());
        return top.assumed(
                "methods",
                stated.isEmpty() ? Optional.empty() : Optional.of(stated),
                defaults.methods(),
                "taken as " + words);
    }

    private Quantity share() {
        String key = "capacitance-share";
        Optional<Quantity> stated = top.optionalPositive(key, Dimension.RATIO);
        if (stated.isPresent() && stated.get().amount() > 1_000_000) {
            top.findings().problem(top.at(key), "'" + key + "' is more than the whole limit; at most 100 % is due");
        }
        return top.assumed(
                key,
                stated,
                defaults.capacitanceShare(),
                "taken as " + defaults.capacitanceShare().text());
    }

    private static String quantity(Fields row) {
        return row.word("quantity", QuantityKind.values(), QuantityKind::word).word();
    }

    private static House.Confirmed confirmed(Fields row) {
        HouseLimits.limit(row);
        return new House.Confirmed(row.text("limit"), row.text("edition"), row.text("by"), row.date("date"));
    }

    private List<String> signs() {
        List<Located<String>> stated = top.locatedTexts("signs");
        if (top.has("signs") && top.items("signs").isEmpty()) {
            top.findings().problem(top.at("signs"), "'signs' lists nobody; leave it out, or list who signs");
        }
        return stated.isEmpty()
                ? defaults.signs()
                : stated.stream().map(Located::value).toList();
    }
}
