/** Tests of the PDF: read back by PDFBox, poppler, qpdf and mupdf. */
package org.capwright.report;
