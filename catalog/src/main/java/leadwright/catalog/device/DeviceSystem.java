package leadwright.catalog.device;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;

/**
 * Several devices on one multiple socket-outlet, as described by a {@code system/1} file.
 *
 * @param outlet supply of the outlet; its current is what the outlet may carry
 * @param members at least one
 */
public record DeviceSystem(String name, Supply outlet, boolean separatingTransformer, List<Member> members) {
    public DeviceSystem {
        members = List.copyOf(members);
    }

    /**
     * One device of it.
     *
     * @param id begins the ids of its parts and places in the whole
     */
    public record Member(String id, Device device) {
        private String named(String part) {
            return id + "-" + part;
        }

        private String title(String part) {
            return device.name() + ": " + part;
        }
    }

    /** Sum of the members' rated currents; empty where one of them states none. */
    public Optional<Quantity> drawn() {
        long sum = 0;
        for (Member member : members) {
            Optional<Quantity> current = member.device().supply().current();
            if (current.isEmpty()) {
                return Optional.empty();
            }
            sum += current.get().amount();
        }
        return Optional.of(Quantity.of(Dimension.CURRENT, sum));
    }

    /**
     * The whole on one plug, as one device: the earth of the outlet is its protective earth, and what its members' earth
     * conductors carry adds up in it. Members' operating modes are left to the tests of each alone.
     */
    public Device whole() {
        return new Device(
                name,
                new Supply(
                        SupplyConnection.FIXED_CORD,
                        Optional.empty(),
                        outlet.cordPlug(),
                        outlet.system(),
                        outlet.lowest(),
                        outlet.highest(),
                        outlet.frequency(),
                        drawn()),
                Protection.CLASS_1,
                FunctionalEarth.NONE,
                members.stream().anyMatch(each -> each.device().battery() != Battery.NONE)
                        ? Battery.BACKS_UP
                        : Battery.NONE,
                members.stream().anyMatch(each -> each.device().mainsSwitch() == MainsSwitch.ELECTRONIC)
                        ? MainsSwitch.ELECTRONIC
                        : MainsSwitch.NONE,
                longest(Device::startUp),
                longest(Device::shutDown),
                members.stream().allMatch(each -> each.device().startUpStated()),
                Optional.of(members.stream()
                        .allMatch(each -> each.device().toleratesPowerCut().orElse(false))),
                builtTo(),
                of(Device::forbids, (member, each) -> new Forbidden(each.test(), member.title(each.because()))),
                of(Device::appliedParts, DeviceSystem::part),
                of(
                        Device::ports,
                        (member, each) ->
                                new Port(member.named(each.id()), member.title(each.name()), each.terminal())),
                of(Device::outputs, DeviceSystem::output),
                of(Device::touchPoints, DeviceSystem::touchPoint),
                of(Device::earthPoints, DeviceSystem::earthPoint),
                of(Device::panel, Member::named),
                limits(),
                Map.of(),
                List.of(),
                Optional.empty(),
                members.stream()
                        .flatMap(each -> each.device().connectors().stream())
                        .distinct()
                        .toList(),
                Optional.of(new SystemInfo(members.stream().map(Member::id).toList(), separatingTransformer)));
    }

    private Quantity longest(Function<Device, Quantity> time) {
        return members.stream()
                .map(each -> time.apply(each.device()))
                .max(Comparator.naturalOrder())
                .orElse(Quantity.seconds(0));
    }

    /** The edition, where all members were built to the same. */
    private Optional<String> builtTo() {
        List<Optional<String>> editions =
                members.stream().map(each -> each.device().builtTo()).distinct().toList();
        return editions.size() == 1 ? editions.get(0) : Optional.empty();
    }

    /** What becomes of a thing of a member in the whole. */
    @FunctionalInterface
    private interface InWhole<T, R> {
        R of(Member member, T thing);
    }

    private <T, R> List<R> of(Function<Device, List<T>> things, InWhole<T, R> inWhole) {
        List<R> all = new ArrayList<>();
        for (Member member : members) {
            things.apply(member.device()).forEach(thing -> all.add(inWhole.of(member, thing)));
        }
        return all;
    }

    /** Limits that name a subject; one for a device as a whole is no limit of the system. */
    private List<ParticularLimit> limits() {
        return of(
                        Device::limits,
                        (member, limit) -> new ParticularLimit(
                                limit.quantity(),
                                limit.of().map(member::named),
                                limit.atMost(),
                                member.title(limit.source())))
                .stream()
                .filter(limit -> limit.of().isPresent())
                .toList();
    }

    private static AppliedPart part(Member member, AppliedPart part) {
        String id = member.named(part.id());
        // A part without named functions has one function with its own id.
        List<PartFunction> functions = part.functions().stream()
                .map(function -> new PartFunction(part.namedFunctions() ? function.id() : id, function.connections()))
                .toList();
        return new AppliedPart(
                id,
                member.title(part.name()),
                part.type(),
                part.defibrillationProof(),
                functions,
                part.namedFunctions(),
                part.set(),
                part.distance(),
                part.cable());
    }

    private static Output output(Member member, Output output) {
        return new Output(
                member.named(output.id()),
                member.named(output.appliedPart()),
                output.functions(),
                output.kind(),
                output.madeSafeBy(),
                output.waitTime(),
                output.mayShare());
    }

    private static TouchPoint touchPoint(Member member, TouchPoint point) {
        return new TouchPoint(
                member.named(point.id()),
                member.title(point.name()),
                point.earthed(),
                point.surface(),
                point.distance(),
                point.from().map(member::named));
    }

    private static EarthPoint earthPoint(Member member, EarthPoint point) {
        return new EarthPoint(
                member.named(point.id()),
                member.title(point.name()),
                point.terminal(),
                point.distance(),
                point.from().map(member::named));
    }
}
