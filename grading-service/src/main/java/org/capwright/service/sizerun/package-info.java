/** {@code POST /v1/size-runs}: reads a style, drafts and grades it, and answers in the media type asked for. */
package org.capwright.service.sizerun;
