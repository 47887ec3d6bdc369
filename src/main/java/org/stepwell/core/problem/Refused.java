package org.stepwell.core.problem;

/** A value, row or request that cannot be taken as it is. Its message is English; {@link #problem()} says it in both. */
public class Refused extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;
    private final transient Problem problem;

    /** Refused for that reason. */
    public Refused(Problem problem) {
        super(problem.toString());
        this.problem = problem;
    }

    /** Refused for the reason of that name, its gaps filled. */
    public Refused(String key, Object... gaps) {
        this(Problem.of(key, gaps));
    }

    /** What is wrong and what would be accepted. */
    public Problem problem() {
        return problem;
    }
}
