package leadwright.planner.order;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import leadwright.catalog.device.EarthPoint;
import leadwright.catalog.device.Port;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Step.Account;
import leadwright.planner.plan.Step.Act;

/** What begins and ends every plan: looking over, checks of supply and tester, putting back. */
final class Framing {
    private final Scene scene;
    private final Texts texts;
    private final List<Obligation> opening = new ArrayList<>();
    private final List<Obligation> closing = new ArrayList<>();

    /** @param checks readings of supply and tester, in clause order; of a tester check listed twice, the second is the end's */
    Framing(Scene scene, List<Obligation> checks) {
        this.scene = scene;
        this.texts = new Texts(scene);
        Map<List<String>, Integer> seen = new LinkedHashMap<>();
        for (Obligation each : checks) {
            boolean again = each.quantity() == QuantityKind.TESTER_CHECK && seen.merge(each.of(), 1, Integer::sum) > 1;
            (again ? closing : opening).add(each);
        }
    }

    List<Draft> before(MainsState state) {
        List<Draft> steps = new ArrayList<>();
        steps.add(draft(
                Act.LOOK,
                "Look the device over: case, cord, plug, leads, fuses, marking; class and part types as in this plan;"
                        + " decontaminated, nobody connected.",
                state,
                scene.times().action("look-over"),
                "What the eye finds needs no reading, and a wrong device or accessory voids them all."));
        if (scene.permanent()) {
            steps.add(draft(
                    Act.WAIT,
                    state == MainsState.ISOLATED
                            ? "Receive the plant from a licensed person: isolated, locked out, proved dead."
                            : "Receive the plant from a licensed person as it is installed and on; nobody at the tester"
                                    + " switches its supply.",
                    state,
                    0,
                    "Permanent plant is switched and isolated by a licensed person only."));
        }
        steps.add(draft(
                Act.LOOK,
                "Part data cables, bonding leads, hoses and rails, and list them for putting back" + others() + ".",
                state,
                scene.times().action("part-cables"),
                "Any of them may be a second way to " + texts.earth() + " that makes readings low."));
        boolean first = true;
        for (Obligation each : opening) {
            steps.add(check(each, state, first));
            first = false;
        }
        return steps;
    }

    private String others() {
        List<String> names = new ArrayList<>();
        scene.device().ports().stream().map(Port::name).forEach(names::add);
        scene.device().earthPoints().stream().map(EarthPoint::name).forEach(names::add);
        return names.isEmpty() ? "" : "; look at " + String.join(", ", names);
    }

    List<Draft> after(MainsState state) {
        List<Draft> steps = new ArrayList<>();
        steps.add(draft(
                Act.RESTORE,
                "Strip the hookup, clean the device and put it back as found: cables, bonding, settings, alarms, clock,"
                        + " battery on charge.",
                state,
                scene.times().action("put-back"),
                "The device goes back as it came."));
        boolean first = true;
        for (Obligation each : closing) {
            steps.add(check(each, state, first));
            first = false;
        }
        if (scene.permanent()) {
            steps.add(draft(
                    Act.WAIT,
                    "Hand the plant back to the licensed person.",
                    state,
                    0,
                    "Permanent plant is put back into service by a licensed person only."));
        }
        steps.add(draft(
                Act.RESTORE,
                "Label the device with the result and the next date.",
                state,
                scene.times().action("label"),
                "A device without a label cannot be told from an untested one."));
        return steps;
    }

    private Draft check(Obligation what, MainsState state, boolean first) {
        int write = scene.times().write();
        Safeguards safeguards = new Safeguards(texts);
        boolean tester = what.quantity() == QuantityKind.TESTER_CHECK;
        return Draft.of(
                        Act.READ,
                        texts.reading(what) + (tester ? "" : " The device is not plugged in yet."),
                        state,
                        OptionalInt.empty(),
                        scene.times().action(first ? "read-first" : "read") + write,
                        Account.READ,
                        tester
                                ? "A blown input fuse or a stuck relay reads zero everywhere."
                                : "A supply that is not tied to " + texts.earth() + " makes everything read low.")
                .reading(what, write, safeguards.caution(what), safeguards.onFail(what));
    }

    private static Draft draft(Act does, String text, MainsState state, int seconds, String because) {
        return Draft.of(does, text, state, OptionalInt.empty(), seconds, Account.PREPARE, because);
    }
}
