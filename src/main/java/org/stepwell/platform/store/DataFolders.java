package org.stepwell.platform.store;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import org.stepwell.platform.StartProblem;

/**
 * The folder of the embedded cluster and the one that takes its place when the store is written anew. The order of
 * renaming leaves a whole store whenever it is cut: the new one is moved in only when it is complete, and the old one
 * lies aside until then.
 */
final class DataFolders {
    static final String DATA = "data";
    static final String FRESH = "data.fresh";
    private static final String BEFORE = "data.before";

    private DataFolders() {
    }

    /** Ends what a cut left: the old store back where no new one took its place, away where one did. */
    static void settle(Path home) {
        Path data = home.resolve(DATA);
        Path before = home.resolve(BEFORE);
        try {
            if (Files.exists(before.resolve("PG_VERSION"))) {
                if (!Files.exists(data)) {
                    Files.move(before, data, StandardCopyOption.ATOMIC_MOVE);
                    force(home);
                    return;
                }
            }
            PostgresBinaries.deleteTree(before);
        } catch (IOException denied) {
            throw new StartProblem("The store in " + home + " was being written anew when that was cut, and cannot be"
                    + " put in order: " + denied.getMessage() + ". Start as the user who owns it.", denied);
        }
    }

    /** Puts the new cluster, complete and stopped, in the place of the old one, and deletes that. */
    static void exchange(Path home) throws IOException {
        Files.move(home.resolve(DATA), home.resolve(BEFORE), StandardCopyOption.ATOMIC_MOVE);
        force(home);
        Files.move(home.resolve(FRESH), home.resolve(DATA), StandardCopyOption.ATOMIC_MOVE);
        force(home);
        PostgresBinaries.deleteTree(home.resolve(BEFORE));
    }

    private static void force(Path folder) throws IOException {
        try (FileChannel channel = FileChannel.open(folder)) {
            channel.force(true);
        }
    }
}
