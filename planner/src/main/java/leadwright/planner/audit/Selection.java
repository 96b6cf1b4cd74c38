package leadwright.planner.audit;

import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import leadwright.planner.plan.Bundle;
import leadwright.planner.plan.Demand;
import leadwright.planner.plan.Hookup;

/** What a person is told to select at the tester, held against what the next reading measures: only the text says it. */
record Selection(Hookup hookup, Demand demand) {

    /** What of the text is wrong, or empty. */
    Optional<String> fault(String text) {
        return wrong(text, "measured", demand.measured())
                .or(() -> wrong(text, "against", demand.against()))
                .or(() -> wrong(text, "tied to (?:earth|ground)", demand.earthed()));
    }

    private Optional<String> wrong(String text, String role, SortedSet<String> connections) {
        SortedSet<Integer> due = new TreeSet<>();
        for (Bundle bundle : hookup.bundles()) {
            if (bundle.connections().stream().anyMatch(connections::contains)) {
                due.addAll(bundle.jacks());
            }
        }
        SortedSet<Integer> said = new TreeSet<>();
        Matcher jacks = Pattern.compile("[ :]" + role + " jacks? ([0-9, ]+)\\(").matcher(text);
        while (jacks.find()) {
            for (String number : jacks.group(1).trim().split(", *")) {
                said.add(Integer.valueOf(number));
            }
        }
        return said.equals(due)
                ? Optional.empty()
                : Optional.of(
                        "says to select " + said + " as " + role.replaceAll("[()?:]", "") + ", which is on " + due);
    }
}
