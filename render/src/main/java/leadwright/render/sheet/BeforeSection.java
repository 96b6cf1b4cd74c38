package leadwright.render.sheet;

import java.util.List;
import java.util.TreeSet;
import leadwright.catalog.device.Output;
import leadwright.catalog.device.Port;
import leadwright.catalog.device.SupplyConnection;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.Plan;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Reading;

/** What must be ticked before mains, and beside it the framed box of what stops the work. */
final class BeforeSection {

    private BeforeSection() {}

    static void write(Sheet sheet) {
        Xhtml page = sheet.page();
        page.in(
                "table",
                "before",
                () -> page.in("tr", "", () -> {
                    page.in("td", "ticks", () -> ticks(sheet));
                    page.in("td", "stop", () -> stop(sheet));
                }));
    }

    private static void ticks(Sheet sheet) {
        Plan plan = sheet.plan();
        Xhtml page = sheet.page();
        page.in("p", "", () -> {
            page.bold("Before mains: ").ticked("decontaminated").ticked("look passed");
        });
        page.in("p", "", () -> {
            page.ticked("nobody connected").ticked("label matches: " + HeadSection.classAndTypes(plan));
        });
        page.in("p", "", () -> {
            checked(sheet, QuantityKind.TESTER_CHECK, "tester check", "Tester check", "µA");
            if (plan.device().runsOnMains() && plan.device().supply().connection() != SupplyConnection.PERMANENT) {
                checked(sheet, QuantityKind.SUPPLY_VOLTAGE, "supply check", sheet.say("Line–earth"), "V");
            }
        });
        page.in("p", "", () -> {
            page.text("Parted: ");
            for (Port port : plan.device().ports()) {
                page.ticked(port.name());
            }
            page.ticked("bonding lead").ticked(sheet.say("other earths (hose, rail, bench)"));
        });
        for (Output output : plan.device().outputs()) {
            String name = plan.device()
                    .part(output.appliedPart())
                    .map(part -> part.name())
                    .orElse(output.id());
            boolean several = plan.device().outputs().stream()
                            .filter(other -> other.appliedPart().equals(output.appliedPart()))
                            .count()
                    > 1;
            String which = several ? name + ", " + output.id() : name;
            page.in("p", "", () -> page.ticked(which + ": to be made safe, two initials in its row"));
        }
    }

    /** A tick that refers to the rows where the values are written; boxes only where the plan has no such rows. */
    private static void checked(Sheet sheet, QuantityKind kind, String words, String label, String unit) {
        List<String> rows = sheet.plan().readings().stream()
                .filter(reading -> reading.obligation().quantity() == kind)
                .map(Reading::id)
                .toList();
        Xhtml page = sheet.page();
        if (!rows.isEmpty()) {
            page.ticked(words + " in order (" + String.join(", ", rows) + ")");
            return;
        }
        page.field(label, "w18", unit);
        if (kind == QuantityKind.SUPPLY_VOLTAGE) {
            page.field(sheet.say("neutral–earth"), "w18", unit);
        }
        page.ticked("in order");
    }

    private static void stop(Sheet sheet) {
        Xhtml page = sheet.page();
        List<Obligation> all =
                sheet.plan().readings().stream().map(Reading::obligation).toList();
        TreeSet<IfNo> lines = new TreeSet<>();
        all.forEach(each -> lines.add(IfNo.of(each, sheet.mainsOnParts())));
        lines.add(IfNo.OUT);
        lines.forEach(line -> page.in("p", "", () -> line.write(sheet)));
        boolean open = all.stream().anyMatch(each -> each.state().fault() == MainsState.Fault.SUPPLY_OPEN);
        page.in("p", "", () -> {
            if (sheet.mainsOnParts()) {
                page.bold("Mains on a part: HANDS OFF, say it. ");
            }
            if (open) {
                page.bold("Supply open is LIVE. ");
            }
            page.text("Smoke, trip, alarm: off at the wall.");
        });
        page.in("p", "", () -> page.field("First aid", "w18", "").field("Isolator", "w18", ""));
    }
}
