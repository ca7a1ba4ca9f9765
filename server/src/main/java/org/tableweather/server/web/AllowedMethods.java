package org.tableweather.server.web;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Any;
import jakarta.enterprise.inject.spi.Bean;
import jakarta.enterprise.inject.spi.BeanManager;
import jakarta.ws.rs.HttpMethod;
import jakarta.ws.rs.Path;
import java.lang.annotation.Annotation;
import java.lang.reflect.Method;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import java.util.regex.Pattern;

/** Which methods an address takes: what the header Allow of a 405 answer must say, and the framework does not. */
@ApplicationScoped
class AllowedMethods {
    private static final Pattern VARIABLE = Pattern.compile("\\{[^{}:]+(?::\\s*((?:[^{}]|\\{[^{}]*})+))?}");

    private final List<Address> addresses = new ArrayList<>();

    /** A path as a pattern, with one method. */
    private record Address(Pattern path, String method) {}

    AllowedMethods(BeanManager beans) {
        for (Bean<?> bean : beans.getBeans(Object.class, Any.Literal.INSTANCE)) {
            Path root = bean.getBeanClass().getAnnotation(Path.class);
            if (root != null) {
                add(root.value(), bean.getBeanClass());
            }
        }
    }

    private void add(String root, Class<?> resource) {
        for (Method method : resource.getMethods()) {
            Path path = method.getAnnotation(Path.class);
            Pattern pattern = pattern(root + (path == null ? "" : path.value()));
            for (Annotation annotation : method.getAnnotations()) {
                HttpMethod http = annotation.annotationType().getAnnotation(HttpMethod.class);
                if (http != null) {
                    addresses.add(new Address(pattern, http.value()));
                }
            }
        }
    }

    private static Pattern pattern(String path) {
        return Pattern.compile(VARIABLE.matcher(path).replaceAll(variable -> {
            String bound = variable.group(1);
            return java.util.regex.Matcher.quoteReplacement(bound == null ? "[^/]+" : "(?:" + bound + ")");
        }));
    }

    /** The methods of a path with commas between; HEAD goes with GET. */
    String of(String path) {
        TreeSet<String> methods = new TreeSet<>(List.of("OPTIONS"));
        for (Address address : addresses) {
            if (address.path().matcher(path).matches()) {
                methods.add(address.method());
                if (address.method().equals("GET")) {
                    methods.add("HEAD");
                }
            }
        }
        return String.join(", ", methods);
    }
}
