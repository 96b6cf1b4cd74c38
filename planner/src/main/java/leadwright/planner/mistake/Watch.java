package leadwright.planner.mistake;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import leadwright.planner.Plan;
import leadwright.planner.foresee.Foreseen;
import leadwright.planner.foresee.Situation;
import leadwright.planner.plan.Proof;
import leadwright.planner.plan.Step;
import leadwright.planner.plan.TimeSplit;

/**
 * What a plan does about slips.
 *
 * @param findings what becomes of each slip
 * @param proofs the cheapest proof steps that show all that proof steps can show
 * @param remaining ids of the slips that nothing shows
 */
public record Watch(List<Finding> findings, List<ProofStep> proofs, List<String> remaining) {
    public Watch {
        findings = List.copyOf(findings);
        proofs = List.copyOf(proofs);
        remaining = List.copyOf(remaining);
    }

    /** Nothing looked for. */
    public static Watch none() {
        return new Watch(List.of(), List.of(), List.of());
    }

    public static Watch of(Plan plan, Map<String, Foreseen> foreseen, Situation situation) {
        List<Finding> findings = Silence.of(plan, foreseen, situation);
        List<ProofStep> proofs = Cover.cheapest(Proofs.of(plan, findings));
        Set<String> shown = new LinkedHashSet<>(Cover.shown(proofs));
        List<String> remaining = findings.stream()
                .filter(each -> each.exposure() == Exposure.SILENT)
                .map(each -> each.slip().id())
                .filter(id -> !shown.contains(id))
                .toList();
        return new Watch(findings, proofs, remaining);
    }

    /** The same without proof steps: every silent slip remains. */
    public Watch withoutProofs() {
        return new Watch(
                findings,
                List.of(),
                findings.stream()
                        .filter(each -> each.exposure() == Exposure.SILENT)
                        .map(each -> each.slip().id())
                        .toList());
    }

    /** Seconds that the proof steps add. */
    public int seconds() {
        return Cover.seconds(proofs);
    }

    /** A plan's steps with the proof steps among them, numbered anew. */
    public List<Step> among(List<Step> steps) {
        List<Step> all = new ArrayList<>();
        for (int i = 0; i < steps.size(); i++) {
            Step next = steps.get(i);
            Step before = steps.get(Math.max(0, i - 1));
            for (ProofStep proof : proofs) {
                if (proof.before().contains(next.number())) {
                    all.add(step(proof, all.size() + 1, before, next));
                }
            }
            all.add(next.numbered(all.size() + 1));
        }
        return all;
    }

    private static Step step(ProofStep proof, int number, Step before, Step next) {
        return new Step(
                number,
                Step.Act.LOOK,
                proof.text(),
                Optional.empty(),
                before.state(),
                proof.hookup().or(next::hookup),
                Optional.empty(),
                Optional.of(Step.PROOF + proof.kind().word()),
                proof.seconds() / proof.before().size(),
                Step.Account.PREPARE,
                0,
                Optional.empty(),
                Optional.empty(),
                "Without it the readings would not show: " + words(proof.kind()) + ".");
    }

    private static String words(ProofKind kind) {
        List<String> words = new ArrayList<>();
        for (SlipKind slip : SlipKind.values()) {
            if (kind.exposes(slip)) {
                words.add(slip.words());
            }
        }
        return String.join("; ", words);
    }

    /** The split with the proof steps' seconds in it. */
    public TimeSplit added(TimeSplit time) {
        Map<Step.Account, Integer> parts = new EnumMap<>(Step.Account.class);
        parts.putAll(time.parts());
        parts.merge(Step.Account.PREPARE, seconds(), Integer::sum);
        return new TimeSplit(time.total() + seconds(), parts, time.plainOrder() + seconds(), time.startUps());
    }

    /** The proof with the proof steps' seconds in it: they are the same in every order of the plan's readings. */
    public Proof added(Proof proof) {
        if (seconds() == 0) {
            return proof;
        }
        return new Proof(
                proof.answer() + seconds(),
                proof.lowerBound() + seconds(),
                proof.argument() + " In it are " + seconds() + " s of proof steps, the same in every order.");
    }
}
