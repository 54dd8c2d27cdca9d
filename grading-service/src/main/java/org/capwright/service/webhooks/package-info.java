/** What happens to orders, told to the addresses that a tenant has named, by the open convention Standard Webhooks. */
package org.capwright.service.webhooks;
