package leadwright.planner.oblige;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import leadwright.catalog.device.Device;
import leadwright.catalog.house.House;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.read.DeviceReader;
import leadwright.catalog.read.HouseReader;
import leadwright.catalog.read.KitReader;
import leadwright.catalog.rules.RuleSet;
import leadwright.catalog.table.RuleSets;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Occasion;

/** Devices, kits and house rules for tests, from text or from the samples. */
final class Bench {
    static final String RECURRENT = "iec-62353-2014";
    static final String THIRD = "iec-60601-1-ed3";

    private Bench() {}

    static Device device(String sample) {
        return deviceFrom(sample(sample));
    }

    static Device deviceFrom(String text) {
        return DeviceReader.read("device", text.getBytes(StandardCharsets.UTF_8))
                .orThrow();
    }

    static Kit kit(String sample) {
        return kitFrom(sample(sample));
    }

    static Kit kitFrom(String text) {
        return KitReader.read("kit", text.getBytes(StandardCharsets.UTF_8)).orThrow();
    }

    /** The Marrowgate bench, which lacks nothing, with a piece of its file replaced. */
    static Kit marrowgateWith(String piece, String instead) {
        String text = sample("k1-marrowgate-bench");
        if (!text.contains(piece)) {
            throw new IllegalArgumentException("the bench does not say '" + piece + "'");
        }
        return kitFrom(text.replace(piece, instead));
    }

    static Kit marrowgate() {
        return kit("k1-marrowgate-bench");
    }

    static House house(String lines) {
        return HouseReader.read("house", ("leadwright: house/1\n" + lines).getBytes(StandardCharsets.UTF_8))
                .orThrow();
    }

    static RuleSet rules(String id) {
        return RuleSets.builtIn().find(id).orElseThrow();
    }

    static Obligations due(Device device, Kit kit, String rules) {
        return due(device, kit, rules, House.defaults());
    }

    static Obligations due(Device device, Kit kit, String rules, House house) {
        return Oblige.oblige(device, kit, rules(rules), house, Occasion.RECURRENT);
    }

    static Obligation get(Obligations due, String key) {
        return due.wanted().stream()
                .filter(each -> each.key().equals(key))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no " + key + " among " + keys(due)));
    }

    static List<String> keys(Obligations due) {
        return due.wanted().stream().map(Obligation::key).toList();
    }

    static String sample(String name) {
        try {
            return Files.readString(Path.of("../samples/" + name + ".yaml"));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
