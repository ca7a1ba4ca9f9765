/** What a pool's own trials say of how they were gathered: attempts left out, drift, order, climate mixed up with something else. */
package org.tableweather.analyzers.standard.catalogue.guard;
