package org.tableweather.server.catalogue;

/**
 * A published session, without its trials.
 *
 * @param id its number here
 * @param roomKey which room
 * @param sessionKey its name over all contributions
 * @param digest of its content
 * @param invented whether it is made up for demonstration
 * @param trials attempts
 */
public record PublishedSession(
        int id, String roomKey, String sessionKey, String digest, boolean invented, long trials) {}
