package org.stepwell.platform.store;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.SecureRandom;
import java.util.HexFormat;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.stepwell.platform.StartProblem;

/** The folder that keeps the embedded store, who holds it now, and its secrets; readable by its owner alone. */
final class StoreHome implements AutoCloseable {
    private final Path folder;
    private @Nullable FileChannel lockFile;

    StoreHome(Path folder) {
        this.folder = folder;
        try {
            boolean made = !Files.exists(folder);
            Files.createDirectories(folder);
            if (made) {
                onlyOwner(folder, "rwx------");
            }
        } catch (IOException denied) {
            throw new StartProblem("The folder " + folder + " cannot be made. Set STEPWELL_HOME to a folder that this "
                    + "user may write to.", denied);
        }
    }

    Path folder() {
        return folder;
    }

    /** Takes the folder until this process ends, however it ends; false when another process holds it. */
    boolean take() {
        try {
            FileChannel channel = FileChannel.open(folder.resolve("lock"), StandardOpenOption.CREATE,
                    StandardOpenOption.WRITE);
            FileLock lock = channel.tryLock();
            if (lock == null) {
                channel.close();
                return false;
            }
            lockFile = channel;
            return true;
        } catch (OverlappingFileLockException heldByThisProcess) {
            return false;
        } catch (IOException denied) {
            throw new StartProblem("The folder " + folder + " cannot be locked: " + denied.getMessage()
                    + ". Set STEPWELL_HOME to a local folder that this user may write to.", denied);
        }
    }

    /** Notes who holds the folder, for a second start to read. */
    void sayHolder(String holder) {
        write("holder", holder);
    }

    /** What the process that holds the folder says about itself. */
    String holder() {
        return read("holder").orElse("another process that is just starting");
    }

    /** A random secret of 192 bits by name, made at first use and kept. */
    String secret(String name) {
        return read("secret-" + name).orElseGet(() -> {
            byte[] bytes = new byte[24];
            new SecureRandom().nextBytes(bytes);
            String secret = HexFormat.of().formatHex(bytes);
            write("secret-" + name, secret);
            return secret;
        });
    }

    boolean hasSecret(String name) {
        return read("secret-" + name).isPresent();
    }

    Optional<String> read(String name) {
        Path file = folder.resolve(name);
        try {
            return Files.exists(file) ? Optional.of(Files.readString(file).strip()) : Optional.empty();
        } catch (IOException unreadable) {
            throw new StartProblem(file + " cannot be read. Start as the user who owns it.", unreadable);
        }
    }

    /** Writes whole or not at all: a crash in between leaves the old content. */
    void write(String name, String content) {
        Path file = folder.resolve(name);
        try {
            Path next = Files.createTempFile(folder, name, ".next");
            onlyOwner(next, "rw-------");
            Files.writeString(next, content + "\n");
            try (FileChannel channel = FileChannel.open(next, StandardOpenOption.WRITE)) {
                channel.force(true);
            }
            Files.move(next, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } catch (IOException full) {
            throw new UncheckedIOException("cannot write " + file, full);
        }
    }

    /** Removes a file; none of that name is as good. */
    void remove(String name) {
        try {
            Files.deleteIfExists(folder.resolve(name));
        } catch (IOException denied) {
            throw new UncheckedIOException("cannot remove " + folder.resolve(name), denied);
        }
    }

    private static void onlyOwner(Path path, String rights) throws IOException {
        if (path.getFileSystem().supportedFileAttributeViews().contains("posix")) {
            Files.setPosixFilePermissions(path, PosixFilePermissions.fromString(rights));
        }
    }

    @Override
    public void close() {
        try {
            if (lockFile != null) {
                Files.deleteIfExists(folder.resolve("holder"));
                lockFile.close();
                lockFile = null;
            }
        } catch (IOException late) {
            throw new UncheckedIOException(late);
        }
    }
}
