package org.stepwell.table;

import java.io.ByteArrayOutputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;

/**
 * One message of HTTP/1.1 as it stands on the wire.
 *
 * @param head first line and headers, without the empty line that ends them
 */
record HttpText(List<String> head, byte[] body) {
    /** Reads one request with a body of a known length; {@code null} when the connection ends before its first byte. */
    static @Nullable HttpText read(InputStream in) throws IOException {
        ByteArrayOutputStream head = new ByteArrayOutputStream();
        int last = 0;
        while (last != 0x0d0a0d0a) {
            int next = in.read();
            if (next < 0) {
                if (head.size() == 0) {
                    return null;
                }
                throw new EOFException();
            }
            head.write(next);
            last = last << 8 | next;
        }
        List<String> lines = lines(head.toByteArray());
        HttpText without = new HttpText(lines, new byte[0]);
        String length = without.header("Content-Length");
        return length == null ? without : new HttpText(lines, in.readNBytes(Integer.parseInt(length)));
    }

    /** A whole answer, its body in one piece. */
    static HttpText of(byte[] message) {
        for (int at = 0; at + 3 < message.length; at++) {
            if (message[at] == '\r' && message[at + 1] == '\n' && message[at + 2] == '\r' && message[at + 3] == '\n') {
                HttpText text = new HttpText(lines(Arrays.copyOf(message, at + 4)),
                        Arrays.copyOfRange(message, at + 4, message.length));
                if (text.header("Transfer-Encoding") != null) {
                    throw new IllegalStateException("an answer in pieces cannot be changed");
                }
                return text;
            }
        }
        throw new IllegalStateException("no end of the headers");
    }

    private static List<String> lines(byte[] head) {
        return List.of(new String(head, StandardCharsets.ISO_8859_1).strip().split("\r\n"));
    }

    String firstLine() {
        return head.getFirst();
    }

    /** What is asked for, without its query. */
    String path() {
        String[] words = firstLine().split(" ");
        return words.length < 2 ? "" : words[1].split("\\?")[0];
    }

    @Nullable String header(String name) {
        return head.stream().filter(line -> is(line, name)).map(line -> line.substring(name.length() + 1).strip())
                .findFirst().orElse(null);
    }

    private static boolean is(String line, String name) {
        return line.toLowerCase(Locale.ROOT).startsWith(name.toLowerCase(Locale.ROOT) + ":");
    }

    HttpText without(String name) {
        return new HttpText(head.stream().filter(line -> !is(line, name)).toList(), body);
    }

    HttpText with(String name, String value) {
        List<String> more = new ArrayList<>(head);
        more.add(name + ": " + value);
        return new HttpText(more, body);
    }

    /** An answer with another text; one that is not 200 stays as it is. */
    HttpText changed(UnaryOperator<String> change) {
        if (!firstLine().contains(" 200")) {
            return this;
        }
        byte[] next = change.apply(new String(body, StandardCharsets.UTF_8)).getBytes(StandardCharsets.UTF_8);
        return new HttpText(without("Content-Length").without("ETag").head(), next)
                .with("Content-Length", Integer.toString(next.length));
    }

    byte[] bytes() {
        byte[] start = (String.join("\r\n", head) + "\r\n\r\n").getBytes(StandardCharsets.ISO_8859_1);
        byte[] all = Arrays.copyOf(start, start.length + body.length);
        System.arraycopy(body, 0, all, start.length, body.length);
        return all;
    }
}
