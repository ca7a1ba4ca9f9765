/**
 * Who may write: accounts with a role, tokens with scopes, and the trail of every write. Tokens are kept as hashes only;
 * the operator's first one is written to a file that only its owner may read.
 */
package org.tableweather.server.accounts;
