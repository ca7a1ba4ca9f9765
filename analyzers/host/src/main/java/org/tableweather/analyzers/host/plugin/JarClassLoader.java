package org.tableweather.analyzers.host.plugin;

import java.io.ByteArrayInputStream;
import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.net.MalformedURLException;
import java.net.URL;
import java.net.URLConnection;
import java.net.URLStreamHandler;
import java.util.Collections;
import java.util.Enumeration;
import java.util.List;
import java.util.Map;

/**
 * Classes and resources out of memory: what was hashed is what runs, whatever happens to the file afterwards, and a jar's
 * manifest cannot name further jars.
 */
final class JarClassLoader extends ClassLoader {
    private final Map<String, byte[]> entries;

    JarClassLoader(String jarName, Map<String, byte[]> entries, ClassLoader parent) {
        super(jarName, parent);
        this.entries = entries;
    }

    @Override
    protected Class<?> findClass(String name) throws ClassNotFoundException {
        byte[] code = entries.get(name.replace('.', '/') + ".class");
        if (code == null) {
            throw new ClassNotFoundException(name);
        }
        return defineClass(name, code, 0, code.length);
    }

    @Override
    protected URL findResource(String name) {
        if (!entries.containsKey(name)) {
            return null;
        }
        try {
            return new URL("plugin", "", -1, "/" + name, new FromMemory());
        } catch (MalformedURLException e) {
            throw new IllegalStateException("a URL with its own handler is never malformed", e);
        }
    }

    @Override
    protected Enumeration<URL> findResources(String name) {
        URL found = findResource(name);
        return Collections.enumeration(found == null ? List.of() : List.of(found));
    }

    private final class FromMemory extends URLStreamHandler {
        @Override
        protected URLConnection openConnection(URL url) {
            return new URLConnection(url) {
                @Override
                public void connect() {
                    // it is here already
                }

                @Override
                public InputStream getInputStream() throws IOException {
                    byte[] bytes = entries.get(url.getPath().substring(1));
                    if (bytes == null) {
                        throw new FileNotFoundException(url.toString());
                    }
                    return new ByteArrayInputStream(bytes);
                }
            };
        }
    }
}
