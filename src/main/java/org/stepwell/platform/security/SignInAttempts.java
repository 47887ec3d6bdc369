package org.stepwell.platform.security;

import io.github.bucket4j.Bucket;
import java.time.Duration;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import org.springframework.stereotype.Component;

/**
 * Limits tries at a password or a code: ten at once and one a minute after for one name from one address, so that
 * nobody elsewhere can lock a teacher out. The numbers are common practice, no source.
 */
@Component
public class SignInAttempts {
    private static final int AT_ONCE = 10;
    private static final int REMEMBERED = 10_000;

    private final Map<String, Bucket> buckets =
            Collections.synchronizedMap(new LinkedHashMap<>(16, 0.75f, true) {
                @Override
                protected boolean removeEldestEntry(Map.Entry<String, Bucket> eldest) {
                    return size() > REMEMBERED;
                }
            });

    /** Whether one more try is allowed now; counts it. */
    public boolean allow(String name, String address) {
        return buckets.computeIfAbsent(name + " " + address, key -> Bucket.builder()
                .addLimit(limit -> limit.capacity(AT_ONCE).refillGreedy(1, Duration.ofMinutes(1))).build())
                .tryConsume(1);
    }

    /** Forgets the tries after one that was right. */
    public void forget(String name, String address) {
        buckets.remove(name + " " + address);
    }
}
