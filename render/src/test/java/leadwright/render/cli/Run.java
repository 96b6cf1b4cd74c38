package leadwright.render.cli;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.function.Function;
import leadwright.planner.Outcome;
import leadwright.planner.Request;

/**
 * One run of the command line inside the test.
 *
 * @param out what it printed on standard output
 * @param err what it said on standard error
 */
record Run(int code, String out, String err) {

    static Run of(Function<Request, Outcome> planner, String... arguments) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int code = Main.run(arguments, new PrintWriter(out), new PrintWriter(err), planner);
        return new Run(code, out.toString(), err.toString());
    }

    /** For commands that plan nothing. */
    static Run of(String... arguments) {
        return of(
                request -> {
                    throw new AssertionError("nothing is to be planned");
                },
                arguments);
    }
}
