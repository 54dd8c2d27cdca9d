/** {@code /v1/keys}: who may call, and for which tenant. */
package org.capwright.service.keys;
