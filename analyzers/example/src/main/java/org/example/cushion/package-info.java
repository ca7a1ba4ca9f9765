/** An analyzer as somebody outside the project writes it. */
package org.example.cushion;
