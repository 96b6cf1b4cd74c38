package leadwright.render.sheet;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.Collectors;
import leadwright.catalog.rules.Limit;
import leadwright.planner.Plan;
import leadwright.planner.foresee.Situation;
import leadwright.planner.mistake.Finding;
import leadwright.planner.mistake.Watch;
import leadwright.planner.plan.NotApplicable;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Reading;
import leadwright.planner.plan.Shortfall;

/** What follows the readings: shortfalls, what is not done and why, the end block, and the lists at the back. */
final class AfterSections {

    private AfterSections() {}

    /** What would help, and what it costs, is for who orders: it stands in the standing edition and in the plan file. */
    static void shortfalls(Sheet sheet) {
        Xhtml page = sheet.page();
        if (sheet.plan().shortfalls().isEmpty()) {
            return;
        }
        page.in("div", "short", () -> {
            page.leaf("h2", "", "Falls short: not measured today");
            page.in("ul", "", () -> {
                for (Shortfall each : sheet.plan().shortfalls()) {
                    page.in("li", "", () -> {
                        page.bold(each.about());
                        if (!each.connections().isEmpty()) {
                            page.text(" (" + sheet.names().subject(each.connections()) + ")");
                        }
                        page.text(": " + sheet.sayOurs(each.because()) + ".");
                    });
                }
            });
        });
    }

    private static void notDone(Sheet sheet) {
        Xhtml page = sheet.page();
        if (sheet.plan().notApplicable().isEmpty()) {
            return;
        }
        page.leaf("h2", "", "Not done, and why");
        page.in("ul", "", () -> {
            for (NotApplicable each : sheet.plan().notApplicable()) {
                page.in("li", "", () -> {
                    page.bold(each.test().replace('-', ' '));
                    page.text(": " + sheet.sayOurs(each.because())
                            + (each.clause().isBlank() ? "" : " [" + each.clause() + "]"));
                });
            }
        });
    }

    static void end(Sheet sheet) {
        Plan plan = sheet.plan();
        Xhtml page = sheet.page();
        boolean provisional = !plan.unconfirmedLimits().isEmpty();
        page.in("div", "end", () -> {
            page.in("p", "", () -> {
                page.text("Put back: ");
                plan.device().ports().forEach(port -> page.ticked(port.name()));
                page.ticked("bonding lead").ticked("test leads, foil off").ticked("settings, alarms, clock");
                if (plan.device().staysOnWithoutMains()) {
                    page.ticked("battery on charge");
                }
                page.ticked("wiped").ticked("functional check").ticked("label on");
            });
            page.in("p", "fields", () -> {
                page.in("span", "result", () -> {
                    page.bold("Result" + (provisional ? " (provisional)" : "") + ": ");
                    result(plan, page);
                });
                page.text(" ").field("Next due", "w30", "");
            });
            page.in("p", "fields", () -> {
                page.field("by", "Tested by", "w30", "").field("2nd person", "w20", "");
                page.field("Reviewed", "w20", "").field("Order no.", "w18", "");
            });
        });
    }

    /** No sheet offers a pass of the device for readings that were not taken. */
    private static void result(Plan plan, Xhtml page) {
        boolean nothing =
                plan.readings().stream().allMatch(each -> each.obligation().phase() == Obligation.Phase.CHECK);
        if (nothing) {
            page.text("none, nothing is measured on the device with this kit");
        } else if (plan.partial()) {
            page.ticked("what was read passes, the rest is due").ticked("FAIL");
        } else {
            page.ticked("pass").ticked("pass with note").ticked("FAIL");
        }
    }

    /** Limits that a house has not compared with its own copy of the standard, each once with what it is used for. */
    static void back(Sheet sheet, List<String> assumed) {
        Plan plan = sheet.plan();
        List<String> ids = plan.unconfirmedLimits();
        boolean foreseen = !plan.foresight().readings().isEmpty()
                || !plan.foresight().watch().findings().isEmpty();
        if (!foreseen
                && ids.isEmpty()
                && plan.warnings().isEmpty()
                && plan.notApplicable().isEmpty()
                && assumed.isEmpty()) {
            return;
        }
        Xhtml page = sheet.page();
        page.in("div", "back", () -> {
            if (!plan.warnings().isEmpty()) {
                page.leaf("h2", "", "To know before the bench");
                page.in("ul", "", () -> plan.warnings().forEach(each -> page.leaf("li", "", sheet.sayOurs(each))));
            }
            notDone(sheet);
            foreseen(sheet);
            unseen(sheet);
            if (!assumed.isEmpty()) {
                page.leaf("h2", "", "Taken for what the files leave out");
                page.in("ul", "", () -> assumed.forEach(each -> page.leaf("li", "", each)));
            }
            if (!ids.isEmpty()) {
                unconfirmed(sheet, ids);
            }
        });
    }

    /** What the sign beside a limit says. */
    private static void foreseen(Sheet sheet) {
        if (sheet.plan().foresight().readings().isEmpty()) {
            return;
        }
        Situation situation = sheet.plan().foresight().situation();
        Xhtml page = sheet.page();
        page.leaf("h2", "", "What ~ beside a limit says");
        page.leaf(
                "p",
                "",
                sheet.sayOurs("What the circuit of this hookup should read, " + situation.text()
                        + "; with a star where assumed values have a say in it. It decides nothing, the limit does. A"
                        + " reading far from it: look at the connections and read again."));
    }

    /** What no reading and no tick of this sheet would show. */
    private static void unseen(Sheet sheet) {
        Watch watch = sheet.plan().foresight().watch();
        if (watch.findings().isEmpty()) {
            return;
        }
        String left = watch.findings().stream()
                .map(Finding::slip)
                .filter(slip -> watch.remaining().contains(slip.id()))
                .map(slip -> sheet.say(slip.words()))
                .distinct()
                .collect(Collectors.joining("; "));
        sheet.page().leaf("h2", "", "What no reading shows");
        sheet.page()
                .leaf(
                        "p",
                        "",
                        (left.isEmpty()
                                        ? "Of slips in joining and setting: nothing, where every tick is true."
                                        : left + ".")
                                + " A wrong label, another cord, a value in the wrong row; two slips that hide each other.");
    }

    private static void unconfirmed(Sheet sheet, List<String> ids) {
        Xhtml page = sheet.page();
        Map<String, Limit> limits = new LinkedHashMap<>();
        Map<String, TreeSet<String>> uses = new LinkedHashMap<>();
        for (Reading reading : sheet.plan().readings()) {
            Obligation what = reading.obligation();
            what.limit().filter(limit -> ids.contains(limit.id())).ifPresent(limit -> {
                limits.putIfAbsent(limit.id(), limit);
                uses.computeIfAbsent(limit.id(), id -> new TreeSet<>()).add(sheet.say(RowWords.named(what.quantity())));
            });
        }
        page.leaf("h2", "", "Limits not yet confirmed: a result that rests on them is provisional");
        page.leaf(
                "p",
                "",
                "Compare each with the department's own copy of the standard and enter it in the house rules under"
                        + " 'confirmed'.");
        page.in("table", "list", () -> {
            page.in(
                    "thead",
                    "",
                    () -> page.in(
                            "tr",
                            "bar",
                            () -> List.of("Limit", "Value", "Used for", "Clause", "Mark", "Rests on")
                                    .forEach(each -> page.leaf("th", "", each))));
            page.in(
                    "tbody",
                    "",
                    () -> limits.values()
                            .forEach(limit -> page.in("tr", "", () -> {
                                page.leaf("td", "", limit.id());
                                page.leaf("td", "", Amounts.bound(limit));
                                page.leaf(
                                        "td", "", uses.get(limit.id()).stream().collect(Collectors.joining(", ")));
                                page.leaf("td", "", limit.clause());
                                page.leaf("td", "", limit.mark().name());
                                page.leaf(
                                        "td",
                                        "",
                                        limit.sources().isEmpty() ? "memory" : String.join(", ", limit.sources()));
                            })));
        });
        page.leaf(
                "p",
                "",
                "Marks: A, two or more independent public texts agree; B, one public text; C, from memory; D, calculated"
                        + " from these.");
    }
}
