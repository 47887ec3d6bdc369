package org.stepwell;

import java.time.Clock;
import org.springframework.boot.autoconfigure.SpringBootApplication;
import org.stepwell.platform.ServerLife;
import org.stepwell.platform.Settings;
import org.stepwell.platform.StartProblem;

/** Entry point. */
@SpringBootApplication
public class Application {
    public static void main(String[] args) {
        try {
            ServerLife.start(Application.class, Settings.from(System::getenv), Clock.systemUTC(), System.out);
        } catch (StartProblem problem) {
            System.err.println(problem.getMessage());
            System.exit(1);
        }
    }
}
