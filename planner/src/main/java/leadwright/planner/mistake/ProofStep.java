package leadwright.planner.mistake;

import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * A proof step that may be added to a plan.
 *
 * @param hookup to which it belongs; empty where it is done once
 * @param before numbers of the steps before which it is done; empty where the sheet has it in any case
 * @param seconds of all its times together
 * @param exposes ids of the slips that it shows
 */
public record ProofStep(
        ProofKind kind, Optional<String> hookup, List<Integer> before, int seconds, Set<String> exposes, String text) {
    public ProofStep {
        before = List.copyOf(before);
        exposes = Set.copyOf(exposes);
    }

    /** {@code count-and-tug/H1} */
    public String id() {
        return kind.word() + hookup.map(each -> "/" + each).orElse("");
    }
}
