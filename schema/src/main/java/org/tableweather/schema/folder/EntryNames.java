package org.tableweather.schema.folder;

import java.util.List;
import java.util.Locale;

/** Which names of files are safe, and which belong to nobody. */
final class EntryNames {
    private EntryNames() {}

    /** Whether a name stays inside the archive on every system. */
    static boolean isSafe(String name) {
        if (name.isEmpty() || name.startsWith("/") || name.indexOf('\\') >= 0 || name.indexOf(':') >= 0) {
            return false;
        }
        if (name.chars().anyMatch(Character::isISOControl)) {
            return false;
        }
        return List.of(name.split("/")).stream().noneMatch(part -> part.equals("..") || part.equals("."));
    }

    /** Whether an operating system left it there. */
    static boolean isJunk(String name) {
        String last = name.substring(name.lastIndexOf('/') + 1).toLowerCase(Locale.ROOT);
        return name.startsWith("__MACOSX/")
                || name.contains("/__MACOSX/")
                || last.equals(".ds_store")
                || last.equals("thumbs.db")
                || last.equals("desktop.ini")
                || last.startsWith("._");
    }

    /**
     * The folder at the top that holds all the files.
     *
     * @return with a slash at the end; empty when they lie at the top or in several folders
     */
    static String topFolder(List<String> names) {
        if (names.isEmpty()) {
            return "";
        }
        int slash = names.get(0).indexOf('/');
        String top = slash < 0 ? "" : names.get(0).substring(0, slash + 1);
        return names.stream().allMatch(name -> name.startsWith(top)) ? top : "";
    }
}
