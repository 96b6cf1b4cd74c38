package leadwright.planner.compare;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import leadwright.planner.plan.Proof;
import leadwright.planner.plan.Step;

/** What changed in the bench time, and in what is proven. */
record Times(Side a, Side b) {

    List<Change> changes() {
        List<Change> changes = new ArrayList<>();
        seconds(Kind.TOTAL, "bench time", a.time().total(), b.time().total(), changes);
        for (Step.Account each : Step.Account.values()) {
            seconds(
                    Kind.SPLIT,
                    word(each),
                    a.time().parts().getOrDefault(each, 0),
                    b.time().parts().getOrDefault(each, 0),
                    changes);
        }
        proof(
                Kind.HOOKUPS_PROOF,
                "proof of the number of hookups",
                proven(
                        a.hookupsProof(),
                        "fewest",
                        String.valueOf(a.hookupsProof().lowerBound())),
                proven(
                        b.hookupsProof(),
                        "fewest",
                        String.valueOf(b.hookupsProof().lowerBound())),
                changes);
        proof(
                Kind.TIME_PROOF,
                "proof of the bench time",
                proven(a.timeProof(), "least", time(a.timeProof())),
                proven(b.timeProof(), "least", time(b.timeProof())),
                changes);
        return changes;
    }

    private static String word(Step.Account account) {
        return switch (account) {
            case REPLUG -> "plugging";
            case NULL -> "nulling";
            case EARTH_LEAD -> "earth lead";
            default -> account.word();
        };
    }

    private static void seconds(Kind kind, String subject, int before, int after, List<Change> changes) {
        if (before != after) {
            changes.add(new Change(
                    kind,
                    after > before ? Trend.MORE : Trend.LESS,
                    subject,
                    subject,
                    Optional.of(Names.duration(before)),
                    Optional.of(Names.duration(after)),
                    List.of(),
                    List.of()));
        }
    }

    private static String time(Proof proof) {
        return Names.duration((int) proof.lowerBound());
    }

    private static String proven(Proof proof, String superlative, String bound) {
        return proof.optimal() ? "proven " + superlative : "not proven " + superlative + ", at least " + bound;
    }

    private static void proof(Kind kind, String subject, String before, String after, List<Change> changes) {
        if (!before.equals(after)) {
            changes.add(Change.of(kind, subject, Optional.of(before), Optional.of(after)));
        }
    }
}
