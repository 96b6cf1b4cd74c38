package leadwright.render.diagram;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import leadwright.catalog.device.Device;
import leadwright.catalog.house.House;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.read.DeviceReader;
import leadwright.catalog.read.KitReader;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.Foresight;
import leadwright.planner.Plan;
import leadwright.planner.plan.Bundle;
import leadwright.planner.plan.Chain;
import leadwright.planner.plan.Demand;
import leadwright.planner.plan.EarthPath;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.Joint;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Proof;
import leadwright.planner.plan.Reading;
import leadwright.planner.plan.Step;
import leadwright.planner.plan.TimeSplit;

/** Plans wired by hand, for drawings: joins, clips, touches and readings follow from the hookups as they are sketched. */
final class Sketch {
    private final Device device;
    private final Kit kit;
    private House house = House.defaults();
    private final List<Hookup> hookups = new ArrayList<>();
    private final List<Reading> readings = new ArrayList<>();
    private final List<Step> steps = new ArrayList<>();
    private Set<Joint> standing = new LinkedHashSet<>();

    Sketch(Device device, Kit kit) {
        this.device = device;
        this.kit = kit;
        step(Step.Act.LOOK, Optional.empty(), Optional.empty(), Optional.empty());
    }

    static Device device(String yaml) {
        return DeviceReader.read("device.yaml", yaml.getBytes(StandardCharsets.UTF_8))
                .orThrow();
    }

    static Kit kit(String yaml) {
        return KitReader.read("kit.yaml", yaml.getBytes(StandardCharsets.UTF_8)).orThrow();
    }

    /** A file of the samples. */
    static String sample(String name) {
        try {
            return Files.readString(Path.of("..", "samples", name + ".yaml"));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    Sketch house(House other) {
        house = other;
        return this;
    }

    Wiring hookup() {
        return new Wiring("H" + (hookups.size() + 1));
    }

    int jacks() {
        return kit.tester().jacks().orElseThrow().count();
    }

    Plan plan() {
        return new Plan(
                "3f9c21ab77d0",
                false,
                false,
                device,
                kit,
                house,
                new Plan.RulesInfo("iec-62353-2014", "IEC 62353", "2014"),
                "recurrent",
                Optional.empty(),
                hookups,
                readings,
                steps,
                List.of(),
                List.of(),
                Optional.empty(),
                List.of(),
                new TimeSplit(0, Map.of(), 0, 1),
                new Proof(hookups.size(), hookups.size(), "sketched"),
                new Proof(0, 0, "sketched"),
                Foresight.none());
    }

    private void step(Step.Act act, Optional<String> hookup, Optional<Joint> joint, Optional<String> place) {
        steps.add(new Step(
                steps.size() + 1,
                act,
                act.word(),
                Optional.empty(),
                MainsState.OFF,
                hookup,
                joint,
                place,
                0,
                Step.Account.READ,
                0,
                Optional.empty(),
                Optional.empty(),
                "sketched"));
    }

    /** One hookup in the making. Items without a number get the next free one of their kind. */
    final class Wiring {
        private final String id;
        private final Map<String, Integer> next = new HashMap<>();
        private final Map<Integer, List<String>> onJack = new LinkedHashMap<>();
        private final Map<Integer, Integer> linkedTo = new LinkedHashMap<>();
        private final Map<Integer, String> links = new LinkedHashMap<>();
        private final List<Chain> chains = new ArrayList<>();
        private final List<EarthPath> earth = new ArrayList<>();
        private final List<String> clips = new ArrayList<>();
        private final List<String> touches = new ArrayList<>();
        private final List<Obligation> taken = new ArrayList<>();

        private Wiring(String id) {
            this.id = id;
        }

        /** Joins a connection through items, written from the device to the tester, to a jack. */
        Wiring join(int jack, String connection, String... items) {
            List<String> named = new ArrayList<>();
            for (String item : items) {
                named.add(item.contains("/") ? item : free(item));
            }
            chains.add(new Chain(connection, named, jack, named.size() + 1));
            onJack.computeIfAbsent(jack, each -> new ArrayList<>()).add(connection);
            return this;
        }

        private String free(String item) {
            String instance;
            do {
                instance = item + "/" + next.merge(item, 1, Integer::sum);
            } while (used(instance));
            return instance;
        }

        private boolean used(String instance) {
            return chains.stream().anyMatch(chain -> chain.items().contains(instance));
        }

        /** Joins every connection of a part or function that is not yet joined. */
        Wiring joinAll(int jack, String prefix, String... items) {
            device.connections().stream()
                    .filter(each -> each.name().startsWith(prefix + "."))
                    .filter(each -> chains.stream()
                            .noneMatch(chain -> chain.connection().equals(each.name())))
                    .forEach(each -> join(jack, each.name(), items));
            return this;
        }

        Wiring link(int jack, int further, String item) {
            linkedTo.put(jack, further);
            links.put(jack, item);
            return this;
        }

        /** Lays the earth lead; items from the tester to the device. */
        Wiring earth(String pole, String point, String socket, String... items) {
            earth.add(new EarthPath(pole, point, socket, List.of(items)));
            return this;
        }

        Wiring clip(String... places) {
            clips.addAll(List.of(places));
            for (String place : places) {
                taken.add(obligation(QuantityKind.EARTH_RESISTANCE, Demand.NOTHING, Optional.of(place)));
            }
            return this;
        }

        Wiring touch(String... places) {
            touches.addAll(List.of(places));
            for (String place : places) {
                taken.add(obligation(QuantityKind.TOUCH_CURRENT, Demand.NOTHING, Optional.of(place)));
            }
            return this;
        }

        /** Takes a reading of the connections whose names begin so. */
        Wiring read(QuantityKind quantity, String... prefixes) {
            Set<String> measured = new TreeSet<>();
            for (Chain chain : chains) {
                for (String prefix : prefixes) {
                    if (chain.connection().startsWith(prefix)) {
                        measured.add(chain.connection());
                    }
                }
            }
            taken.add(obligation(quantity, Demand.of(measured), Optional.empty()));
            return this;
        }

        Sketch done() {
            List<Bundle> bundles = new ArrayList<>();
            onJack.forEach((jack, connections) -> {
                List<Integer> jacks = new ArrayList<>(List.of(jack));
                Optional.ofNullable(linkedTo.get(jack)).ifPresent(jacks::add);
                Collections.sort(jacks);
                List<String> own = links.containsKey(jack) ? List.of(links.get(jack)) : List.of();
                bundles.add(new Bundle(id + ".b" + (bundles.size() + 1), connections, jacks, own));
            });
            Hookup hookup = new Hookup(id, bundles, chains, earth);
            hookups.add(hookup);
            Set<Joint> wanted = joints(hookup);
            for (Joint joint : standing) {
                if (!wanted.contains(joint)) {
                    step(Step.Act.PART, Optional.of(id), Optional.of(joint), Optional.empty());
                }
            }
            for (Joint joint : wanted) {
                if (!standing.contains(joint)) {
                    step(Step.Act.JOIN, Optional.of(id), Optional.of(joint), Optional.empty());
                }
            }
            standing = wanted;
            clips.forEach(place -> step(Step.Act.CLIP, Optional.of(id), Optional.empty(), Optional.of(place)));
            touches.forEach(place -> step(Step.Act.TOUCH, Optional.of(id), Optional.empty(), Optional.of(place)));
            for (Obligation obligation : taken) {
                step(Step.Act.READ, Optional.of(id), Optional.empty(), Optional.empty());
                readings.add(new Reading("R" + (readings.size() + 1), obligation, Optional.of(id)));
            }
            return Sketch.this;
        }

        private Set<Joint> joints(Hookup hookup) {
            Set<Joint> joints = new LinkedHashSet<>();
            for (Chain chain : hookup.chains()) {
                String from = chain.connection();
                for (String item : chain.items()) {
                    if (!from.equals(Device.TOUCH_PROBE)) {
                        joints.add(new Joint(from, item));
                    }
                    from = item;
                }
                joints.add(new Joint(from, "jack-" + chain.jack()));
            }
            linkedTo.forEach((jack, further) -> joints.add(new Joint(links.get(jack), "jack-" + further)));
            for (EarthPath path : hookup.earth()) {
                String to = path.socket();
                for (String item : path.items()) {
                    joints.add(new Joint(item, to));
                    to = item;
                }
            }
            return joints;
        }
    }

    private static Obligation obligation(QuantityKind quantity, Demand demand, Optional<String> place) {
        return new Obligation(
                quantity.word() + demand.key() + place.orElse(""),
                quantity,
                "5.3",
                List.of(),
                demand,
                place,
                Optional.empty(),
                MainsState.OFF,
                "on",
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }
}
