package leadwright.planner.order;

import java.util.Optional;
import java.util.OptionalInt;
import leadwright.planner.plan.Joint;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Step;

/**
 * A step before it has its number.
 *
 * @param reading what it reads, for a read step
 * @param hookup number of the hookup that stands or is being built, in the order given
 */
record Draft(
        Step.Act does,
        String text,
        Optional<Obligation> reading,
        MainsState state,
        OptionalInt hookup,
        Optional<Joint> joint,
        Optional<String> place,
        int seconds,
        Step.Account account,
        int writing,
        Optional<String> caution,
        Optional<String> onFail,
        String because) {

    static Draft of(
            Step.Act does,
            String text,
            MainsState state,
            OptionalInt hookup,
            int seconds,
            Step.Account account,
            String because) {
        return new Draft(
                does,
                text,
                Optional.empty(),
                state,
                hookup,
                Optional.empty(),
                Optional.empty(),
                seconds,
                account,
                0,
                Optional.empty(),
                Optional.empty(),
                because);
    }

    Draft joining(Joint made) {
        return new Draft(
                does,
                text,
                reading,
                state,
                hookup,
                Optional.of(made),
                place,
                seconds,
                account,
                writing,
                caution,
                onFail,
                because);
    }

    Draft at(String where) {
        return new Draft(
                does,
                text,
                reading,
                state,
                hookup,
                joint,
                Optional.of(where),
                seconds,
                account,
                writing,
                caution,
                onFail,
                because);
    }

    Draft warning(String what) {
        return new Draft(
                does,
                text,
                reading,
                state,
                hookup,
                joint,
                place,
                seconds,
                account,
                writing,
                Optional.of(what),
                onFail,
                because);
    }

    Draft reading(Obligation what, int write, Optional<String> caution, Optional<String> stop) {
        return new Draft(
                does,
                text,
                Optional.of(what),
                state,
                hookup,
                joint,
                place,
                seconds,
                account,
                write,
                caution,
                stop,
                because);
    }
}
