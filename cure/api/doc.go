// Package api is the core behind one call without a transport: Handle takes the bytes of a request and gives the bytes
// of a response. The page's worker, and whatever else stands in front of the core, add nothing but the way the bytes
// travel. A program that needs less than all of it names its groups of operations to Offer.
//
// The same request always gives the same bytes. A response that is not ok either lists faults, which the asker can put
// right, or carries a message that begins with "panic:", after which the program that holds the core should be started
// afresh.
package api
