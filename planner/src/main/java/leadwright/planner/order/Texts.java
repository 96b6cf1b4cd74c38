package leadwright.planner.order;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import leadwright.catalog.device.AppliedPart;
import leadwright.catalog.device.Connection;
import leadwright.catalog.device.EarthPoint;
import leadwright.catalog.device.OperatingMode;
import leadwright.catalog.device.Port;
import leadwright.catalog.device.TouchPoint;
import leadwright.catalog.house.EarthWord;
import leadwright.catalog.kit.Component;
import leadwright.catalog.kit.Method;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.plan.Demand;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.NaturalOrder;
import leadwright.planner.plan.Obligation;

/** Names and sentences for a person at the bench, with the house's word for earth. */
record Texts(Scene scene) {

    String earth() {
        return scene.house().words() == EarthWord.GROUND ? "ground" : "earth";
    }

    /** First letter large. */
    static String sentence(String text) {
        return text.isEmpty() ? text : Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }

    String state(MainsState state) {
        String polarity = switch (state.polarity()) {
            case NORMAL -> "normal polarity";
            case REVERSED -> "reversed polarity";
            case NONE ->
                switch (state) {
                    case INSTALLED_ON -> "installed and on";
                    case ISOLATED -> "isolated";
                    default -> "off";
                };
        };
        if (state.polarity() == MainsState.Polarity.NONE) {
            return polarity;
        }
        return switch (state.fault()) {
            case NONE -> polarity + ", no fault";
            case SUPPLY_OPEN -> polarity + ", supply open: STILL LIVE";
            case EARTH_OPEN -> polarity + ", " + earth() + " open";
        };
    }

    /** An operating mode by its name for people. */
    String mode(String id) {
        return scene.device().modes().stream()
                .filter(each -> each.id().equals(id))
                .map(OperatingMode::name)
                .findFirst()
                .orElse(id);
    }

    /** A connection with its name for people. */
    String connection(String name) {
        return name + called(name);
    }

    private String called(String name) {
        Connection known = scene.connections().get(name);
        if (known == null) {
            return "";
        }
        Optional<String> called = switch (known.kind()) {
            case PATIENT -> scene.device().part(known.part()).map(AppliedPart::name);
            case HOUSING, PORT, TOUCH_PROBE -> placeName(known.part());
        };
        return called.map(each -> " (" + each + ")").orElse("");
    }

    private Optional<String> placeName(String id) {
        return scene.device().touchPoints().stream()
                .filter(each -> each.id().equals(id))
                .map(TouchPoint::name)
                .findFirst()
                .or(() -> scene.device().ports().stream()
                        .filter(each -> each.id().equals(id))
                        .map(Port::name)
                        .findFirst())
                .or(() -> scene.device().earthPoints().stream()
                        .filter(each -> each.id().equals(id))
                        .map(EarthPoint::name)
                        .findFirst());
    }

    /** A touch point, port or earth point with its name for people. */
    String place(String id) {
        return switch (id) {
            case "inlet-earth" -> "the " + earth() + " pin of the inlet";
            case "cord-earth" -> "the " + earth() + " contact of the cord's connector";
            case "cord-plug-earth" -> "the " + earth() + " pin of the cord's plug";
            case "reference-earth" -> "the reference " + earth();
            default -> placeName(id).map(name -> id + " (" + name + ")").orElse(id);
        };
    }

    /** An end of a joint. */
    String end(String name) {
        if (name.startsWith("jack-")) {
            return "jack " + name.substring(5).replace("#rear", " (back of the plug there)");
        }
        return switch (name) {
            case "earth-jack" -> "the " + earth() + " jack";
            case "second-jack" -> "the second jack";
            default -> connection(name);
        };
    }

    /** Connections, whole parts as one. */
    String group(Collection<String> names) {
        Map<String, List<String>> byPart = new LinkedHashMap<>();
        TreeSet<String> sorted = new TreeSet<>(NaturalOrder.IDS);
        sorted.addAll(names);
        for (String name : sorted) {
            Connection known = scene.connections().get(name);
            boolean patient = known != null && known.kind() == Connection.Kind.PATIENT;
            byPart.computeIfAbsent(patient ? "part " + known.part() : name, key -> new ArrayList<>())
                    .add(name);
        }
        List<String> said = new ArrayList<>();
        byPart.forEach((key, members) -> said.add(members(key, members)));
        return String.join(", ", said);
    }

    private String members(String key, List<String> members) {
        if (!key.startsWith("part ")) {
            return members.get(0).equals("touch-probe") ? "the touch probe" : connection(members.get(0));
        }
        String id = key.substring(5);
        int all = scene.device().part(id).map(part -> part.connections().size()).orElse(0);
        if (members.size() > 1 && members.size() == all) {
            return "all " + all + " of " + id
                    + scene.device()
                            .part(id)
                            .map(part -> " (" + part.name() + ")")
                            .orElse("");
        }
        return String.join(" with ", members) + called(members.get(0));
    }

    String quantity(QuantityKind kind) {
        return switch (kind) {
            case EARTH_RESISTANCE -> earth() + " resistance";
            case EARTH_LEAKAGE -> earth() + " leakage current";
            case FUNCTIONAL_EARTH_LEAKAGE -> "functional " + earth() + " leakage current";
            case TOUCH_CURRENT_BETWEEN -> "touch current between two parts";
            case EQUIPMENT_LEAKAGE -> "equipment leakage current";
            case APPLIED_PART_LEAKAGE -> "applied part leakage current";
            case PATIENT_LEAKAGE -> "patient leakage current";
            case TOTAL_PATIENT_LEAKAGE -> "total patient leakage current";
            case PATIENT_AUXILIARY -> "patient auxiliary current";
            case LEAD_TO_LEAD -> "current between leads";
            case MAINS_ON_APPLIED_PART -> "leakage current with mains on the applied part";
            case TOTAL_MAINS_ON_APPLIED_PART -> "total leakage current with mains on the applied parts";
            case MAINS_ON_UNEARTHED_METAL -> "leakage current with mains on the un" + earth() + "ed metal";
            case MAINS_ON_PORT -> "leakage current with mains on the port";
            case PROOF -> "proof reading";
            case TESTER_CHECK -> "tester check";
            default -> kind.word().replace('-', ' ');
        };
    }

    /** What a reading is of, and between what. */
    String reading(Obligation what) {
        StringBuilder text = new StringBuilder("Read the ").append(quantity(what.quantity()));
        if (what.quantity() == QuantityKind.SUPPLY_VOLTAGE) {
            text.append(poles(what));
        }
        what.component().ifPresent(each -> text.append(each == Component.AC ? ", a.c." : ", d.c."));
        Demand demand = what.demand();
        if (!demand.isNothing()) {
            text.append(", from ").append(group(demand.measured()));
            if (!demand.against().isEmpty()) {
                text.append(" to ").append(group(demand.against()));
            }
            if (!demand.earthed().isEmpty()) {
                text.append("; tied to ").append(earth()).append(": ").append(group(demand.earthed()));
            }
        }
        what.place()
                .filter(place -> demand.isNothing() || demand.measured().contains("touch-probe"))
                .ifPresent(place -> text.append(", at ").append(place(place)));
        what.earthSubject()
                .ifPresent(subject -> text.append(" (").append(subject(subject)).append(')'));
        if (demand.isNothing() && what.place().isEmpty() && !what.of().isEmpty()) {
            text.append(", of ").append(of(what));
        }
        what.insulatedFrom().ifPresent(each -> text.append(", against the ").append(each.replace("earth", earth())));
        what.sourcePolarity().ifPresent(each -> text.append("; source ").append(each.word()));
        what.method()
                .filter(each -> each != Method.DIRECT)
                .ifPresent(each -> text.append("; ").append(each.word()).append(" method"));
        if (what.quantity() != QuantityKind.TESTER_CHECK) {
            text.append("; ").append(state(what.state()));
        }
        if (!what.mode().equals("on") && !what.mode().equals("off")) {
            text.append(", mode ").append(mode(what.mode()));
        }
        return text.append('.').toString();
    }

    private static String of(Obligation what) {
        boolean mains = what.insulatedFrom().isPresent() && what.of().equals(List.of("mains"));
        return mains ? "the mains part" : String.join(", ", what.of());
    }

    /** Between which poles the supply is read: the second word of the key, such as {@code line-to-earth}. */
    private String poles(Obligation what) {
        String[] words = what.key().split("/");
        return words.length < 2 || !words[1].contains("-to-")
                ? ""
                : ", " + words[1].replace('-', ' ').replace("earth", earth());
    }

    private String subject(Obligation.EarthSubject subject) {
        return switch (subject) {
            case PLUG_TO_PART -> "from the plug's " + earth() + " pin, cord fitted and flexed";
            case INLET_TO_PART -> "from the inlet's " + earth() + " pin, cord out, two leads";
            case CORD -> "the cord alone, flexed";
            case REFERENCE_TO_PART -> "from the reference " + earth() + ", two leads";
        };
    }
}
