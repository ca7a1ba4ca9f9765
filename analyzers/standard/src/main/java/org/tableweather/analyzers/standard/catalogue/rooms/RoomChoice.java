package org.tableweather.analyzers.standard.catalogue.rooms;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.tableweather.analyzers.standard.catalogue.Figures;

/**
 * Which room is meant.
 *
 * @param position among the rooms; −1 when it is not clear
 * @param problem why it is not clear; empty when it is
 */
record RoomChoice(int position, String problem) {

    /**
     * Finds it.
     *
     * @param wanted key, or id where only one room is called so; empty: the one with the most trials, of several the first
     */
    static RoomChoice of(List<PooledRoom> rooms, Optional<String> wanted) {
        if (wanted.isEmpty()) {
            int most = 0;
            for (int room = 1; room < rooms.size(); room++) {
                most = rooms.get(room).trials() > rooms.get(most).trials() ? room : most;
            }
            return new RoomChoice(most, "");
        }
        String name = wanted.get();
        List<Integer> found = IntStream.range(0, rooms.size())
                .filter(room -> rooms.get(room).key().equals(name)
                        || rooms.get(room).key().endsWith("/" + name))
                .boxed()
                .toList();
        if (found.size() == 1) {
            return new RoomChoice(found.get(0), "");
        }
        List<String> keys = found.isEmpty()
                ? rooms.stream().map(PooledRoom::key).toList()
                : found.stream().map(room -> rooms.get(room).key()).toList();
        String problem =
                found.isEmpty() ? "No room " + name + " has usable trials" : found.size() + " rooms are called " + name;
        return new RoomChoice(-1, problem + ": set room to one of " + Figures.listed(keys) + ".");
    }
}
