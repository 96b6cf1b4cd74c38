package leadwright.planner.order;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import leadwright.catalog.device.Output;
import leadwright.planner.plan.Joint;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.Step.Account;
import leadwright.planner.plan.Step.Act;

/** What the hands do when hookups change: joints parted from the device inwards, then made from the tester outwards. */
final class Hands {
    private final Scene scene;
    private final Texts texts;
    private final Map<Joint, Contact> standing = new LinkedHashMap<>();
    private final Map<Joint, Integer> branches = new HashMap<>();
    private final Map<String, Set<Integer>> taken = new TreeMap<>();

    Hands(Scene scene) {
        this.scene = scene;
        this.texts = new Texts(scene);
    }

    /** Joints that are made elsewhere, such as the earth lead's. */
    void stands(List<Contact> contacts) {
        contacts.forEach(each -> standing.put(each.plain(), each));
    }

    List<Draft> change(List<Contact> wanted, MainsState state, int hookup, String because) {
        Map<Joint, Contact> next = new LinkedHashMap<>();
        wanted.forEach(each -> next.put(each.plain(), each));
        List<Contact> parted = new ArrayList<>(standing.values().stream()
                .filter(each -> !next.containsKey(each.plain()))
                .toList());
        Collections.reverse(parted);
        List<Contact> joined = next.values().stream()
                .filter(each -> !standing.containsKey(each.plain()))
                .toList();
        List<Draft> steps = new ArrayList<>(madeSafe(parted, joined, state, hookup));
        for (Contact each : parted) {
            steps.add(Draft.of(
                            Act.PART,
                            "Part " + texts.end(each.from()) + " from "
                                    + texts.end(marked(each).to()) + ".",
                            state,
                            OptionalInt.of(hookup),
                            each.part(),
                            Account.REPLUG,
                            because)
                    .joining(marked(each)));
            release(each);
        }
        for (Contact each : joined) {
            if (each.branch()) {
                branches.put(each.plain(), branch(each.to()));
            }
            steps.add(Draft.of(
                            Act.JOIN,
                            "Join " + texts.end(each.from()) + " to "
                                    + texts.end(marked(each).to()) + ".",
                            state,
                            OptionalInt.of(hookup),
                            each.join(),
                            Account.REPLUG,
                            because)
                    .joining(marked(each)));
        }
        // Joints that stay may now belong to other connections.
        standing.putAll(next);
        return steps;
    }

    private List<Draft> madeSafe(List<Contact> parted, List<Contact> joined, MainsState state, int hookup) {
        List<Draft> steps = new ArrayList<>();
        List<Output> plugged = outputs(joined);
        List<Output> all = new ArrayList<>(outputs(parted));
        plugged.stream().filter(each -> !all.contains(each)).forEach(all::add);
        for (Output output : all) {
            steps.add(Draft.of(
                            Act.MAKE_SAFE,
                            "Make the therapy output " + output.id() + " safe"
                                    + output.madeSafeBy().map(how -> ": " + how).orElse("")
                                    + ". Read it back; two initials.",
                            state,
                            OptionalInt.of(hookup),
                            0,
                            Account.PREPARE,
                            TherapyWords.because(output))
                    .at(output.id())
                    .warning(TherapyWords.caution(output)));
        }
        int wait = Scene.wait(plugged);
        if (wait > 0) {
            steps.add(Draft.of(
                    Act.WAIT,
                    waiting(plugged, wait),
                    state,
                    OptionalInt.of(hookup),
                    wait,
                    Account.PREPARE,
                    "The device file asks for this wait after the output was last used."));
        }
        return steps;
    }

    /** Names each output with its own stated wait, and says so where one wait stands for several. */
    private static String waiting(List<Output> plugged, int wait) {
        List<String> each = new ArrayList<>();
        for (Output output : plugged) {
            output.waitTime().ifPresent(time -> each.add(output.id() + " " + BenchTimes.seconds(time) + " s"));
        }
        String said = "Wait " + wait + " s after the therapy output was made safe: " + String.join(", ", each) + ".";
        return each.size() < 2
                ? said
                : "Wait " + wait + " s after the therapy outputs were made safe: " + String.join(", ", each)
                        + ". The waits run side by side; the longest stands for all.";
    }

    private List<Output> outputs(List<Contact> contacts) {
        return scene.outputsOf(
                contacts.stream().flatMap(each -> each.connections().stream()).toList());
    }

    private int branch(String fanOut) {
        Set<Integer> used = taken.computeIfAbsent(fanOut, key -> new TreeSet<>());
        int number = 1;
        while (used.contains(number)) {
            number++;
        }
        used.add(number);
        return number;
    }

    private void release(Contact contact) {
        standing.remove(contact.plain());
        Integer branch = branches.remove(contact.plain());
        if (branch != null) {
            taken.getOrDefault(contact.to(), new TreeSet<>()).remove(branch);
        }
    }

    private Joint marked(Contact contact) {
        String to = contact.to();
        if (contact.branch()) {
            to = to + "#branch-" + branches.get(contact.plain());
        } else if (contact.rear()) {
            to = to + "#rear";
        }
        return new Joint(contact.from(), to);
    }
}
