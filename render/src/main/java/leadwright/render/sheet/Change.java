package leadwright.render.sheet;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import leadwright.planner.plan.Chain;
import leadwright.planner.plan.EarthPath;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.Joint;

/**
 * A change of wiring in words that a hand can follow: wires that come or go whole, wires of which one end moves, shared
 * items, the earth lead.
 */
final class Change {

    private final Names names;
    private final Terms terms;
    private final Map<String, List<String>> wiresOf = new LinkedHashMap<>();
    private final Map<String, Integer> ownJoints = new LinkedHashMap<>();
    private final List<String> earthItems = new ArrayList<>();

    /** @param hookup the one that stands when all the joints in question are made */
    Change(Names names, Terms terms, Hookup hookup) {
        this.names = names;
        this.terms = terms;
        for (Chain chain : hookup.chains()) {
            for (String item : chain.items()) {
                wiresOf.computeIfAbsent(item, each -> new ArrayList<>()).add(chain.connection());
            }
        }
        for (Chain chain : hookup.chains()) {
            long own = chain.items().stream().filter(this::isOfOneWire).count();
            // The joint at the device, and the outer joint of each item that serves this wire alone.
            ownJoints.put(chain.connection(), 1 + (int) own);
        }
        for (EarthPath path : hookup.earth()) {
            earthItems.addAll(path.items());
        }
    }

    /** {@code whole: Temperature; one end: ECG: R (jack 1), L (jack 2); spread 1 (jack 5)}. */
    String words(List<Joint> joints) {
        Map<String, List<Joint>> byWire = new LinkedHashMap<>();
        List<String> shared = new ArrayList<>();
        boolean earth = false;
        for (Joint joint : joints) {
            String item = plain(joint.from());
            if (names.isConnection(item) || ownJoints.containsKey(item)) {
                byWire.computeIfAbsent(item, each -> new ArrayList<>()).add(joint);
            } else if (isOfOneWire(item)) {
                byWire.computeIfAbsent(wiresOf.get(item).get(0), each -> new ArrayList<>())
                        .add(joint);
            } else if (earthItems.contains(item)) {
                earth = true;
            } else {
                shared.add(end(joint.from()) + " (" + end(joint.to()) + ")");
            }
        }
        List<String> words = new ArrayList<>();
        List<String> whole = byWire.entrySet().stream()
                .filter(wire -> wire.getValue().size() == ownJoints.getOrDefault(wire.getKey(), 0))
                .map(Map.Entry::getKey)
                .toList();
        if (!whole.isEmpty()) {
            words.add("whole: " + names.subject(whole));
        }
        List<String> some = names.inPanelOrder(byWire.keySet()).stream()
                .filter(wire -> !whole.contains(wire))
                .toList();
        if (!some.isEmpty()) {
            words.add("one end: " + oneEnd(some, byWire));
        }
        words.addAll(shared);
        if (earth) {
            words.add(terms.say("earth lead"));
        }
        return String.join("; ", words);
    }

    private String oneEnd(List<String> wires, Map<String, List<Joint>> byWire) {
        Map<String, List<String>> byGroup = new LinkedHashMap<>();
        for (String wire : wires) {
            String ends =
                    byWire.get(wire).stream().map(joint -> end(joint.to())).collect(Collectors.joining(", "));
            byGroup.computeIfAbsent(names.group(wire), each -> new ArrayList<>())
                    .add(names.wire(wire) + " (" + ends + ")");
        }
        return byGroup.entrySet().stream()
                .map(group -> group.getKey() + ": " + String.join(", ", group.getValue()))
                .collect(Collectors.joining("; "));
    }

    private boolean isOfOneWire(String item) {
        return wiresOf.getOrDefault(item, List.of()).size() == 1;
    }

    private static String plain(String end) {
        int hash = end.indexOf('#');
        return hash < 0 ? end : end.substring(0, hash);
    }

    private static String end(String joined) {
        return joined.replace("#branch-", " branch ")
                .replace("#", " ")
                .replace('/', ' ')
                .replace("jack-", "jack ");
    }
}
