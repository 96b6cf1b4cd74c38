package leadwright.catalog.read;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.DeviceSystem;
import leadwright.catalog.device.Supply;
import leadwright.catalog.device.SupplyConnection;
import leadwright.catalog.device.SupplySystem;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.table.MainsCouplers;
import leadwright.catalog.text.Document;
import leadwright.catalog.text.Fields;
import leadwright.catalog.text.Outcome;
import leadwright.catalog.text.Problem;

/** Reads {@code system/1} files: devices on one multiple socket-outlet, each described by a file of its own. */
public final class SystemReader {
    private static final String CURRENT = "current";

    private final Fields top;
    private final Function<String, Outcome<Device>> files;

    private SystemReader(Fields top, Function<String, Outcome<Device>> files) {
        this.top = top;
        this.files = files;
    }

    /**
     * Reads a system.
     *
     * @param file name of the file, for messages
     * @param bytes its content, YAML or JSON in UTF-8
     * @param files reads the device file that a member names
     */
    public static Outcome<DeviceSystem> read(String file, byte[] bytes, Function<String, Outcome<Device>> files) {
        return Document.read(file, bytes, "system/1", top -> new SystemReader(top, files).system());
    }

    private Supplier<DeviceSystem> system() {
        String name = top.text("name");
        Optional<Fields> section = top.section("outlet");
        Optional<Supply> outlet = section.map(SystemReader::outlet);
        boolean transformer = section.map(fields -> fields.yesNo("separating-transformer", false))
                .orElse(false);
        Optional<String> socket = section.flatMap(fields ->
                fields.optionalOneOf("socket", MainsCouplers.builtIn().plugs().keySet()));
        List<DeviceSystem.Member> members = members(outlet, socket);
        if (top.has("members") && members.isEmpty() && top.findings().clean()) {
            top.findings().problem(top.at("members"), "'members' lists none; a system has at least one");
        }
        section.ifPresent(fields -> sum(fields, members));
        return () -> new DeviceSystem(name, outlet.orElseThrow(), transformer, members);
    }

    private static Supply outlet(Fields fields) {
        Optional<Quantity> voltage = Optional.of(fields.positive("voltage", Dimension.VOLTAGE));
        return new Supply(
                SupplyConnection.FIXED_CORD,
                Optional.empty(),
                fields.optionalOneOf(
                        "cord-plug", MainsCouplers.builtIn().plugs().keySet()),
                fields.optionalWord("system", SupplySystem.values(), SupplySystem::word)
                        .orElse(SupplySystem.LINE_NEUTRAL),
                voltage,
                voltage,
                fields.optionalPositive("frequency", Dimension.FREQUENCY),
                Optional.of(fields.positive(CURRENT, Dimension.CURRENT)));
    }

    private List<DeviceSystem.Member> members(Optional<Supply> outlet, Optional<String> socket) {
        Ids ids = new Ids("member", top.findings());
        List<DeviceSystem.Member> members = new ArrayList<>();
        for (Fields row : top.rows("members")) {
            String id = ids.claim(row);
            String file = row.text("device");
            if (!file.isEmpty()) {
                member(row, id, file, outlet, socket).ifPresent(members::add);
            }
        }
        return members;
    }

    private Optional<DeviceSystem.Member> member(
            Fields row, String id, String file, Optional<Supply> outlet, Optional<String> socket) {
        if (file.startsWith("/") || file.contains("..") || file.contains("\\") || file.contains(":")) {
            row.findings()
                    .problem(row.at("device"), "a member's file stands beside the system's; write its name alone");
            return Optional.empty();
        }
        Outcome<Device> read = files.apply(file);
        for (Problem problem : read.problems()) {
            row.findings().problem(row.at("device"), "the member's file is not right: " + problem.text());
        }
        if (read instanceof Outcome.Read<Device> found) {
            found.assumed().forEach(each -> row.findings().assume(id + ", " + each));
            notOnOutlet(found.record(), outlet, socket)
                    .ifPresent(reason -> row.findings().problem(row.at("device"), reason));
            if (!found.record().modes().isEmpty()) {
                row.findings()
                        .assume(id
                                + ": its operating modes are read on it alone; the whole is read with it switched on");
            }
        }
        return read.found().map(device -> new DeviceSystem.Member(id, device));
    }

    private static Optional<String> notOnOutlet(Device device, Optional<Supply> outlet, Optional<String> socket) {
        Supply own = device.supply();
        if (own.connection() == SupplyConnection.NONE || own.connection() == SupplyConnection.PERMANENT) {
            return Optional.of("'" + device.name() + "' has no plug for the outlet; test it by itself");
        }
        if (outlet.isEmpty()) {
            return Optional.empty();
        }
        if (own.system() != outlet.get().system()) {
            return Optional.of(
                    "'" + device.name() + "' is for a " + own.system().word() + " supply, the outlet is "
                            + outlet.get().system().word());
        }
        boolean voltage = own.lowest().isEmpty()
                || own.highest().isEmpty()
                || outlet.get().lowest().isEmpty()
                // Rated supplies hold for a mains voltage within a tenth (common practice, no source).
                || outlet.get().lowest().get().amount() * 10
                                >= own.lowest().get().amount() * 9
                        && outlet.get().lowest().get().amount() * 10
                                <= own.highest().get().amount() * 11;
        if (!voltage) {
            return Optional.of("'" + device.name() + "' is not rated for the outlet's "
                    + outlet.get().lowest().get().text());
        }
        return own.cordPlug()
                .filter(plug -> socket.isPresent() && !MainsCouplers.builtIn().enters(plug, socket.get()))
                .map(plug ->
                        "the plug " + plug + " of '" + device.name() + "' does not enter the outlet's " + socket.get());
    }

    /** The outlet carries the sum of its members' rated currents. */
    private void sum(Fields section, List<DeviceSystem.Member> members) {
        Optional<Quantity> carries = section.optionalQuantity(CURRENT, Dimension.CURRENT);
        long sum = 0;
        for (DeviceSystem.Member member : members) {
            Optional<Quantity> current = member.device().supply().current();
            if (current.isEmpty()) {
                section.findings().assume(member.id() + ": states no rated current, and the sum was not compared");
            }
            sum += current.map(Quantity::amount).orElse(0L);
        }
        Quantity drawn = Quantity.of(Dimension.CURRENT, sum);
        if (carries.isPresent() && !drawn.atMost(carries.get())) {
            section.findings()
                    .problem(
                            section.at(CURRENT),
                            "the members draw " + drawn.text() + " together, and the outlet carries "
                                    + carries.get().text());
        }
    }
}
