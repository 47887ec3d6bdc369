package org.stepwell;

import org.springframework.boot.autoconfigure.SpringBootApplication;
import org.stepwell.cli.Cli;

/** Entry point. */
@SpringBootApplication
public class Application {
    /** Hands everything to the command line. */
    public static void main(String[] args) {
        Cli.run(args);
    }
}
