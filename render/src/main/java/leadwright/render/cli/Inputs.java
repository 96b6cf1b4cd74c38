package leadwright.render.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.DeviceSystem;
import leadwright.catalog.house.House;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.Tester;
import leadwright.catalog.read.DeviceReader;
import leadwright.catalog.read.HouseReader;
import leadwright.catalog.read.KitReader;
import leadwright.catalog.read.SystemReader;
import leadwright.catalog.rules.RuleSet;
import leadwright.catalog.table.RuleSets;
import leadwright.catalog.table.ShippedFiles;
import leadwright.catalog.text.Outcome;
import leadwright.catalog.text.Problem;
import leadwright.planner.plan.NaturalOrder;
import leadwright.planner.reach.KitReport;

/**
 * The files of one run. Problems of all of them are reported together.
 *
 * @param assumed values that the files leave out and the program filled in, a line each
 */
record Inputs(Device device, Kit kit, House house, RuleSet rules, List<String> assumed) {

    private static final Pattern SYSTEM = Pattern.compile("(?m)^\\W*leadwright[\"']?\\s*:\\s*[\"']?system/");

    private static final Pattern DEVICE_OR_SYSTEM =
            Pattern.compile("(?m)^\\W*leadwright[\"']?\\s*:\\s*[\"']?(device|system)/");

    /** Name of the kit that is taken where none is given, as messages show it. */
    static final String DEFAULT_KIT = "the default kit";

    /** What a run without a kit takes; stands first in what the files leave out. */
    static final String DEFAULT_KIT_ASSUMED = "no kit named: the built-in plain bench kit is assumed, not yours";

    /**
     * @param kit empty for the default kit
     * @param house empty for the defaults of house rules
     * @param rules empty for the rule set that the house names
     * @throws BadInput with every problem of every file
     */
    static Inputs read(Path device, Optional<Path> kit, Optional<Path> house, Optional<String> rules) {
        Collected collected = new Collected();
        Optional<Device> readDevice = collected.file(device, (name, bytes) -> deviceOrSystem(device, bytes));
        Optional<Kit> readKit = kit.isPresent()
                ? collected.file(kit.get(), KitReader::read)
                : collected
                        .outcome(KitReader.read(DEFAULT_KIT, ShippedFiles.defaultKit()), false)
                        .map(Inputs::undated);
        Optional<House> readHouse =
                house.isPresent() ? collected.file(house.get(), HouseReader::read) : Optional.of(House.defaults());
        Optional<RuleSet> ruleSet = readHouse.flatMap(each -> collected.rules(rules.orElse(each.rules())));
        collected.stop();
        if (kit.isEmpty()) {
            collected.assumed.add(0, DEFAULT_KIT_ASSUMED);
        }
        return new Inputs(
                readDevice.orElseThrow(),
                readKit.orElseThrow(),
                readHouse.orElseThrow(),
                ruleSet.orElseThrow(),
                collected.assumed);
    }

    /**
     * Several devices with one kit.
     *
     * @param given files in the order in which they are shown
     */
    record Many(Kit kit, House house, RuleSet rules, List<KitReport.Given> given) {}

    /**
     * @param devices device or system files, or folders: of a folder every device and system file, in natural order
     * @throws BadInput with every problem of every file
     */
    static Many read(Path kit, List<Path> devices, Optional<Path> house, Optional<String> rules) {
        Collected collected = new Collected();
        Optional<Kit> readKit = collected.file(kit, KitReader::read);
        Optional<House> readHouse =
                house.isPresent() ? collected.file(house.get(), HouseReader::read) : Optional.of(House.defaults());
        Optional<RuleSet> ruleSet = readHouse.flatMap(each -> collected.rules(rules.orElse(each.rules())));
        List<KitReport.Given> given = new ArrayList<>();
        for (Path file : files(devices, collected)) {
            collected
                    .file(file, (name, bytes) -> deviceOrSystem(file, bytes))
                    .ifPresent(device -> given.add(new KitReport.Given(file.toString(), device)));
        }
        collected.stop();
        return new Many(readKit.orElseThrow(), readHouse.orElseThrow(), ruleSet.orElseThrow(), given);
    }

    /** The built-in kit without its calibration date: no paper prints a date that is not of the tester in hand. */
    private static Kit undated(Kit kit) {
        Tester tester = kit.tester();
        return new Kit(
                kit.name(),
                new Tester(
                        tester.name(),
                        tester.jacks(),
                        tester.earthJack(),
                        tester.touchThrough(),
                        tester.inlet(),
                        tester.outlets(),
                        tester.switches(),
                        tester.networks(),
                        tester.methods(),
                        tester.components(),
                        tester.earthTest(),
                        tester.insulation(),
                        tester.partSource(),
                        tester.accuracy(),
                        Optional.empty()),
                kit.items(),
                kit.checks(),
                kit.connectors());
    }

    private static List<Path> files(List<Path> devices, Collected collected) {
        List<Path> files = new ArrayList<>();
        for (Path each : devices) {
            if (!Files.isDirectory(each) || each.toString().isEmpty()) {
                files.add(each);
                continue;
            }
            List<Path> in = inFolder(each, collected);
            if (in.isEmpty()) {
                collected.problems.add(
                        each + ": the folder holds no device file (*.yaml with leadwright: device/1 or system/1)");
            }
            files.addAll(in);
        }
        return files;
    }

    /** What says of itself that it is a device or a system; other files of a folder are none of our business. */
    private static List<Path> inFolder(Path folder, Collected collected) {
        try (Stream<Path> all = Files.list(folder)) {
            return all.filter(file -> file.getFileName().toString().endsWith(".yaml"))
                    .filter(Files::isRegularFile)
                    .sorted(Comparator.comparing(file -> file.getFileName().toString(), NaturalOrder.IDS))
                    .filter(file -> DEVICE_OR_SYSTEM
                            .matcher(new String(bytes(file), StandardCharsets.UTF_8))
                            .find())
                    .toList();
        } catch (IOException e) {
            collected.problems.add(folder + ": cannot be read: " + e.getMessage());
            return List.of();
        }
    }

    /** A device file, or a system file: then the whole on one plug. */
    private static Outcome<Device> deviceOrSystem(Path file, byte[] bytes) {
        if (!isSystem(bytes)) {
            return DeviceReader.read(file.toString(), bytes);
        }
        Outcome<DeviceSystem> system = system(file, bytes);
        return system instanceof Outcome.Read<DeviceSystem> read
                ? new Outcome.Read<>(read.record().whole(), read.assumed())
                : new Outcome.Refused<>(system.problems());
    }

    static boolean isSystem(byte[] bytes) {
        return SYSTEM.matcher(new String(bytes, StandardCharsets.UTF_8)).find();
    }

    /** Reads a system with the device files that stand beside it. */
    static Outcome<DeviceSystem> system(Path file, byte[] bytes) {
        return SystemReader.read(file.toString(), bytes, name -> {
            Path beside = file.resolveSibling(name);
            try {
                return DeviceReader.read(beside.toString(), bytes(beside));
            } catch (BadInput e) {
                return new Outcome.Refused<>(e.lines().stream()
                        .map(line -> new Problem(beside.toString(), 1, 1, line))
                        .toList());
            }
        });
    }

    /**
     * The content of a file.
     *
     * @throws BadInput when it cannot be read
     */
    static byte[] bytes(Path file) {
        named("a file", file);
        try {
            return Files.readAllBytes(file);
        } catch (NoSuchFileException e) {
            throw new BadInput(file + ": there is no such file");
        } catch (IOException e) {
            String reason = Files.isDirectory(file) ? "it is a folder" : String.valueOf(e.getMessage());
            throw new BadInput(file + ": cannot be read: " + reason);
        }
    }

    /** @throws BadInput when the name of {@code what} is empty, which the system would take for the present folder */
    static void named(String what, Path file) {
        if (file.toString().isEmpty()) {
            throw new BadInput("the name given for " + what + " is empty");
        }
    }

    /** @throws BadInput with the ids that there are */
    static RuleSet rules(String id) {
        return RuleSets.builtIn()
                .find(id)
                .orElseThrow(() -> new BadInput("there is no rule set '" + id + "'; there are: "
                        + String.join(", ", RuleSets.builtIn().ids())));
    }

    /** What a file leaves out, in the order of the keys' names: how the file lists its parts changes no document. */
    static List<String> inOrder(List<String> assumed) {
        return assumed.stream().sorted(NaturalOrder.IDS).toList();
    }

    private static final class Collected {
        private final List<String> problems = new ArrayList<>();
        private final List<String> assumed = new ArrayList<>();

        <T> Optional<T> file(Path file, BiFunction<String, byte[], Outcome<T>> reader) {
            try {
                return outcome(reader.apply(file.toString(), bytes(file)), true);
            } catch (BadInput e) {
                problems.addAll(e.lines());
                return Optional.empty();
            }
        }

        <T> Optional<T> outcome(Outcome<T> outcome, boolean stateAssumed) {
            outcome.problems().stream().map(Problem::text).forEach(problems::add);
            if (stateAssumed && outcome instanceof Outcome.Read<T> read) {
                assumed.addAll(inOrder(read.assumed()));
            }
            return outcome.found();
        }

        Optional<RuleSet> rules(String id) {
            try {
                return Optional.of(Inputs.rules(id));
            } catch (BadInput e) {
                problems.addAll(e.lines());
                return Optional.empty();
            }
        }

        void stop() {
            if (!problems.isEmpty()) {
                throw new BadInput(problems);
            }
        }
    }
}
