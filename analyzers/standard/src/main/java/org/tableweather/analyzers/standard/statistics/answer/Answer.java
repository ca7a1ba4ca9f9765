package org.tableweather.analyzers.standard.statistics.answer;

import java.util.function.Function;

/**
 * What an estimator hands back: a value, or why these data give none. Misuse (a negative variance, arrays that do not fit)
 * is an {@link IllegalArgumentException} instead.
 *
 * @param <T> the value
 */
public sealed interface Answer<T> {

    /**
     * A value.
     *
     * @param value never null
     */
    record Given<T>(T value) implements Answer<T> {}

    /**
     * No value.
     *
     * @param refusal why
     */
    record Refused<T>(Refusal refusal) implements Answer<T> {}

    /** An answer that holds this value. */
    static <T> Answer<T> of(T value) {
        return new Given<>(value);
    }

    /**
     * An answer that holds none.
     *
     * @param cause which of the cases
     * @param detail with figures, and what would help
     */
    static <T> Answer<T> refuse(Refusal.Cause cause, String detail) {
        return new Refused<>(new Refusal(cause, detail));
    }

    /**
     * Handles either case.
     *
     * @param given what to do with a value
     * @param refused what to do with none
     */
    default <R> R fold(Function<? super T, ? extends R> given, Function<? super Refusal, ? extends R> refused) {
        if (this instanceof Given<T> answer) {
            return given.apply(answer.value());
        }
        return refused.apply(((Refused<T>) this).refusal());
    }

    /** The answer to the next question, which may be refused as well; a refusal stays as it is. */
    default <R> Answer<R> then(Function<? super T, Answer<R>> next) {
        return fold(next, Refused<R>::new);
    }

    /**
     * The value, where a refusal would be a fault of the caller.
     *
     * @throws IllegalStateException with the refusal's words
     */
    default T orThrow() {
        return fold(Function.identity(), refusal -> {
            throw new IllegalStateException(refusal.cause() + ": " + refusal.detail());
        });
    }
}
