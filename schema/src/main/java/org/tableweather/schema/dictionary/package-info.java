/** The format described for people: what files it is made of, and every field of them on one page. */
package org.tableweather.schema.dictionary;
