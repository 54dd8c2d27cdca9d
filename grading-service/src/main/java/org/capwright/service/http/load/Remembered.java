package org.capwright.service.http.load;

import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToLongBiFunction;

/**
 * What was asked for last, as much of it as there is room for: what was asked for longest ago goes first, and what is larger than all the room is not kept. Safe for many threads.
 *
 * @param <K> what is asked for
 * @param <V> what comes of it
 */
public final class Remembered<K, V> {

    private final long most;
    private final ToLongBiFunction<K, V> weight;
    private final Map<K, V> kept = new LinkedHashMap<>(16, 0.75f, true);
    private long taken;

    /**
     * Nothing yet.
     *
     * @param most the room, bytes
     * @param weight how much of it an entry takes, the same each time it is asked
     */
    public Remembered(long most, ToLongBiFunction<K, V> weight) {
        this.most = most;
        this.weight = weight;
    }

    /**
     * What is remembered.
     *
     * @param key what is asked for
     * @return what came of it, if that is still there
     */
    public synchronized Optional<V> find(K key) {
        return Optional.ofNullable(kept.get(key));
    }

    /**
     * Remembers, unless it is there already.
     *
     * @param key what was asked for
     * @param value what came of it
     */
    public synchronized void keep(K key, V value) {
        long heavy = weight.applyAsLong(key, value);
        if (heavy > most || kept.putIfAbsent(key, value) != null) {
            return;
        }
        taken += heavy;
        Iterator<Map.Entry<K, V>> eldest = kept.entrySet().iterator();
        while (taken > most) {
            Map.Entry<K, V> entry = eldest.next();
            taken -= weight.applyAsLong(entry.getKey(), entry.getValue());
            eldest.remove();
        }
    }

    /**
     * How much room is taken.
     *
     * @return bytes
     */
    public synchronized long taken() {
        return taken;
    }
}
