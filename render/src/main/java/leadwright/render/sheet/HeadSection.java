package leadwright.render.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import leadwright.catalog.device.Protection;
import leadwright.catalog.kit.Method;
import leadwright.planner.Plan;

/** Five lines: whose sheet, of which plan, which device, by which rules, where, when and with what. */
final class HeadSection {

    private HeadSection() {}

    static void write(Sheet sheet) {
        Plan plan = sheet.plan();
        Xhtml page = sheet.page();
        if (plan.trainingCopy()) {
            page.leaf("p", "alarm", "TRAINING: not a record. The tester is past its calibration date.");
        }
        if (plan.partial()) {
            page.leaf(
                    "p", "alarm", "PARTIAL: this bench kit cannot take every reading that is due; see 'Falls short'.");
        }
        page.in(
                "table",
                "head",
                () -> page.in("tr", "", () -> {
                    page.in("td", "", () -> {
                        page.leaf("h1", "", plan.device().name());
                        page.leaf("p", "", "Bench sheet, electrical safety test");
                    });
                    page.in("td", "right", () -> {
                        page.in("p", "", () -> department(plan, page));
                        page.in("p", "", () -> {
                            page.text("Plan ").bold(sheet.shortFingerprint()).text(", bench edition");
                        });
                    });
                }));
        page.in("p", "rules", () -> {
            page.text("Rules: " + plan.rules().name() + edition(plan) + methods(plan) + ". Occasion: "
                    + plan.occasion().replace('-', ' ') + ". ");
            page.bold(plan.trainingCopy() ? "Training copy." : "Not a training copy.");
        });
        page.in("p", "fields", () -> {
            page.field("inventory", "Asset", "w36", "").field("serial", "Serial", "w36", "");
            page.field("Cord tag", "w22", "");
            page.field("date", "Date", "w24", plan.on().map(Object::toString).orElse(""));
        });
        page.in("p", "fields", () -> {
            page.field("accessories", "Accessories", "w50", "").field("Place", "w28", "");
            page.field("mains-voltage", "Supply", "w20", "V").field("at", "w18", "h");
        });
        page.in("p", "fields", () -> {
            page.field("tester", "Tester", "w40", "");
            plan.kit()
                    .tester()
                    .calibratedUntil()
                    .ifPresentOrElse(
                            date -> page.ticked("calibrated to " + date), () -> page.field("calibrated to", "w24", ""));
            page.field("Lead box", "w40", "");
        });
        notices(sheet);
    }

    private static void department(Plan plan, Xhtml page) {
        if (plan.house().department().isPresent()) {
            page.text(plan.house().department().get());
        } else {
            page.field("Department", "w36", "");
        }
    }

    /** What waits at the back, said once at the head. */
    private static void notices(Sheet sheet) {
        int unconfirmed = sheet.plan().unconfirmedLimits().size();
        List<String> words = new ArrayList<>();
        if (unconfirmed > 0) {
            words.add(unconfirmed + (unconfirmed == 1 ? " limit" : " limits") + " not yet confirmed, see the back.");
        }
        if (!sheet.plan().notApplicable().isEmpty()) {
            words.add("Not done, and why: the back.");
        }
        if (!words.isEmpty()) {
            sheet.page().leaf("p", "notices", String.join(" ", words));
        }
    }

    private static String edition(Plan plan) {
        String edition = plan.rules().edition();
        return edition.isEmpty() ? "" : ", edition " + edition;
    }

    private static String methods(Plan plan) {
        List<String> methods = plan.readings().stream()
                .flatMap(reading -> reading.obligation().method().stream())
                .map(Method::word)
                .distinct()
                .toList();
        return methods.isEmpty() ? "" : ", " + String.join(" and ", methods) + " method";
    }

    /** {@code Class I; CF: ECG, Temperature; BF: Cuff pressure}. */
    static String classAndTypes(Plan plan) {
        String types = plan.device().panel().stream()
                .flatMap(id -> plan.device().part(id).stream())
                .collect(Collectors.groupingBy(
                        part -> part.type(),
                        java.util.TreeMap::new,
                        Collectors.mapping(part -> part.name(), Collectors.joining(", "))))
                .descendingMap()
                .entrySet()
                .stream()
                .map(entry -> entry.getKey().word() + ": " + entry.getValue())
                .collect(Collectors.joining("; "));
        String protection = protection(plan.device().protection());
        return types.isEmpty() ? protection + ", no applied parts" : protection + "; " + types;
    }

    static String protection(Protection protection) {
        return switch (protection) {
            case CLASS_1 -> "Class I";
            case CLASS_2 -> "Class II";
            case INTERNALLY_POWERED -> "Internally powered";
        };
    }
}
