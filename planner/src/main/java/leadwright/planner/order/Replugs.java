package leadwright.planner.order;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import leadwright.catalog.device.Output;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.Joint;

/**
 * Phase 3: what it takes to come from one hookup to another.
 *
 * <p>Sites 0 … n − 1 are the hookups; site n + h is hookup h while the earth lead is still on it, as at the beginning.
 */
final class Replugs {

    /**
     * One re-plugging.
     *
     * @param seconds parting, joining, and the wait of therapy outputs that are plugged
     * @param kept worth of the joints that stay
     * @param atLeast no pairing of like instances takes less
     * @param underPower whether every joint concerned may be moved under power where the house allows that
     * @param therapy whether a therapy output is plugged or unplugged: only with the device shut down
     */
    record Replug(int seconds, int kept, int atLeast, boolean underPower, boolean therapy) {
        private Replug and(int more) {
            return new Replug(seconds + more, kept, atLeast + more, underPower, therapy);
        }

        private Replug lowest() {
            return new Replug(atLeast, kept, atLeast, underPower, therapy);
        }
    }

    private final int hookups;
    private final List<List<Contact>> leads = new ArrayList<>();
    private final List<List<Contact>> earth = new ArrayList<>();
    private final Replug[][] table;
    private final Replug[] first;

    Replugs(List<Hookup> all, Scene scene, boolean earthLead) {
        hookups = all.size();
        for (Hookup hookup : all) {
            leads.add(Arrangement.ofLeads(hookup, scene));
            List<Contact> lead = earthLead ? Arrangement.ofEarth(hookup, scene) : List.of();
            earth.add(
                    scene.earthLeadMayStay()
                            ? lead
                            : lead.stream()
                                    .filter(each -> Scene.isItem(each.to()))
                                    .toList());
        }
        table = new Replug[2 * hookups][hookups];
        first = new Replug[hookups];
        for (int to = 0; to < hookups; to++) {
            first[to] = replug(List.of(), leads.get(to), scene);
            for (int from = 0; from < 2 * hookups; from++) {
                if (from % hookups != to) {
                    Replug plain = replug(standing(from), leads.get(to), scene);
                    table[from][to] =
                            referenceLost(from, scene) ? plain.and(scene.times().action("clip")) : plain;
                }
            }
        }
    }

    private Replugs(
            int hookups, List<List<Contact>> leads, List<List<Contact>> earth, Replug[][] table, Replug[] first) {
        this.hookups = hookups;
        this.leads.addAll(leads);
        this.earth.addAll(earth);
        this.table = table;
        this.first = first;
    }

    /** Whether some pairing of like instances is not proven to be the best. */
    boolean open() {
        return pairs().anyMatch(each -> each.atLeast() < each.seconds());
    }

    /** Whether what is parted from this site takes the tester's only earth with it. */
    boolean referenceLost(int site, Scene scene) {
        return scene.referenceBySecondLead()
                && site >= hookups
                && earth.get(site - hookups).stream().anyMatch(each -> each.to().equals("second-jack"));
    }

    private Stream<Replug> pairs() {
        return IntStream.range(0, 2 * hookups)
                .boxed()
                .flatMap(from -> IntStream.range(0, hookups)
                        .filter(to -> from % hookups != to)
                        .mapToObj(to -> table[from][to]));
    }

    /** The same with every re-plugging at the least that any pairing may take. */
    Replugs lowest() {
        Replug[][] lowest = new Replug[2 * hookups][hookups];
        for (int from = 0; from < 2 * hookups; from++) {
            for (int to = 0; to < hookups; to++) {
                if (from % hookups != to) {
                    lowest[from][to] = table[from][to].lowest();
                }
            }
        }
        return new Replugs(hookups, leads, earth, lowest, first);
    }

    /** The same where nothing is moved under power, and no hookup with a therapy output is touched while the device is on. */
    Replugs strict() {
        Replug[][] strict = new Replug[2 * hookups][hookups];
        for (int from = 0; from < 2 * hookups; from++) {
            for (int to = 0; to < hookups; to++) {
                if (from % hookups != to) {
                    Replug one = table[from][to];
                    boolean therapy = one.therapy() || therapy(from % hookups) || therapy(to);
                    strict[from][to] = new Replug(one.seconds(), one.kept(), one.atLeast(), false, therapy);
                }
            }
        }
        return new Replugs(hookups, leads, earth, strict, first);
    }

    private boolean therapy(int hookup) {
        return first[hookup].therapy();
    }

    int hookups() {
        return hookups;
    }

    /** What a re-plugging from this site has to undo. */
    List<Contact> standing(int site) {
        List<Contact> all = new ArrayList<>(leads.get(site % hookups));
        if (site >= hookups) {
            all.addAll(earth.get(site - hookups));
        }
        return all;
    }

    List<Contact> leads(int hookup) {
        return leads.get(hookup);
    }

    Replug between(int site, int hookup) {
        return table[site][hookup];
    }

    /** The first set-up. */
    Replug first(int hookup) {
        return first[hookup];
    }

    static Replug replug(List<Contact> from, List<Contact> to, Scene scene) {
        Likeness.Pairing pairing = Likeness.between(from, to);
        Map<String, String> names = pairing.standsFor();
        Set<Joint> staying = new HashSet<>();
        Set<Joint> there = new HashSet<>();
        to.forEach(each -> there.add(each.plain()));
        List<Contact> changed = new ArrayList<>();
        for (Contact each : from) {
            // An item that serves as none keeps a name that no other arrangement has.
            Joint joint = each.renamed(name -> Scene.isItem(name) ? names.getOrDefault(name, "none/" + name) : name)
                    .plain();
            if (there.contains(joint)) {
                staying.add(joint);
            } else {
                changed.add(each);
            }
        }
        int seconds = changed.stream().mapToInt(Contact::part).sum();
        List<Contact> joined =
                to.stream().filter(each -> !staying.contains(each.plain())).toList();
        seconds += joined.stream().mapToInt(Contact::join).sum();
        // A part of a second that might yet be saved is a second in which no one can promise anything.
        int slack = (pairing.atMost() - pairing.kept() + Contact.SECOND - 1) / Contact.SECOND;
        List<Output> plugged = scene.outputsOf(
                joined.stream().flatMap(each -> each.connections().stream()).toList());
        int wait = Scene.wait(plugged);
        changed.addAll(joined);
        boolean therapy =
                changed.stream().flatMap(each -> each.connections().stream()).anyMatch(scene.therapy()::containsKey);
        boolean underPower = changed.stream().allMatch(Contact::insulated);
        return new Replug(seconds + wait, pairing.kept(), Math.max(0, seconds - slack) + wait, underPower, therapy);
    }
}
