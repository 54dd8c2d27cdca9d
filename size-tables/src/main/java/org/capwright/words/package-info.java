/** What is said to people: sentences written in English where they are meant, and said in other languages by a catalogue each. */
package org.capwright.words;
