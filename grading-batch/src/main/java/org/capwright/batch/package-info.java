/** Orders by the hundred million: a Spark job that reads them line by line, cuts each by the engine and writes a table of files. What is made of one order knows nothing of Spark. */
package org.capwright.batch;
