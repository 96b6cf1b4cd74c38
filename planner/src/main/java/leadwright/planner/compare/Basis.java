package leadwright.planner.compare;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** What the two plans were made for, where it differs. */
record Basis(Side a, Side b) {

    List<Change> changes() {
        List<Change> changes = new ArrayList<>();
        fact(Kind.DEVICE, "device", a.device().name(), b.device().name(), changes);
        fact(Kind.PROTECTION, "protection", a.device().protection(), b.device().protection(), changes);
        parts(changes);
        fact(Kind.KIT, "kit", a.bench().kit(), b.bench().kit(), changes);
        fact(Kind.TESTER, "tester", a.bench().tester(), b.bench().tester(), changes);
        fact(
                Kind.CALIBRATION,
                "tester calibrated until",
                a.bench().calibratedUntil().map(LocalDate::toString),
                b.bench().calibratedUntil().map(LocalDate::toString),
                changes);
        fact(Kind.RULES, "rule set", rules(a), rules(b), changes);
        fact(Kind.OCCASION, "occasion", a.occasion(), b.occasion(), changes);
        fact(Kind.DATE, "date", a.on().map(LocalDate::toString), b.on().map(LocalDate::toString), changes);
        fact(Kind.DEPARTMENT, "department", a.house().department(), b.house().department(), changes);
        fact(
                Kind.SIGNS,
                "signed by",
                String.join(", ", a.house().signs()),
                String.join(", ", b.house().signs()),
                changes);
        return changes;
    }

    private static String rules(Side side) {
        String edition = side.rules().edition();
        return side.rules().name() + (edition.isEmpty() ? "" : ", edition " + edition) + " ("
                + side.rules().id() + ")";
    }

    private static void fact(Kind kind, String subject, String before, String after, List<Change> changes) {
        fact(kind, subject, Optional.of(before), Optional.of(after), changes);
    }

    private static void fact(
            Kind kind, String subject, Optional<String> before, Optional<String> after, List<Change> changes) {
        if (!before.equals(after)) {
            changes.add(Change.of(kind, subject, before, after));
        }
    }

    private void parts(List<Change> changes) {
        Map<String, Side.Part> inA = parts(a);
        Map<String, Side.Part> inB = parts(b);
        Set<String> ids = new LinkedHashSet<>(inA.keySet());
        ids.addAll(inB.keySet());
        for (String id : ids) {
            Optional<Side.Part> before = Optional.ofNullable(inA.get(id));
            Optional<Side.Part> after = Optional.ofNullable(inB.get(id));
            fact(Kind.APPLIED_PART, id, before.map(Side.Part::name), after.map(Side.Part::name), changes);
            if (before.isPresent() && after.isPresent()) {
                fact(Kind.PART_TYPE, id, before.get().type(), after.get().type(), changes);
                connections(id, before.get(), after.get(), changes);
            }
        }
    }

    private static void connections(String id, Side.Part before, Side.Part after, List<Change> changes) {
        List<String> went = new ArrayList<>(before.connections());
        went.removeAll(after.connections());
        List<String> came = new ArrayList<>(after.connections());
        came.removeAll(before.connections());
        if (!went.isEmpty() || !came.isEmpty()) {
            changes.add(Change.of(
                    Kind.PART_CONNECTIONS,
                    id,
                    went.isEmpty() ? Optional.empty() : Optional.of(Names.few(went)),
                    came.isEmpty() ? Optional.empty() : Optional.of(Names.few(came))));
        }
    }

    private static Map<String, Side.Part> parts(Side side) {
        Map<String, Side.Part> parts = new LinkedHashMap<>();
        side.device().parts().forEach(part -> parts.put(part.id(), part));
        return parts;
    }
}
