// Package contract writes down, for other languages, what package job reads and package result answers: a JSON Schema of
// the job and TypeScript types of everything that crosses the boundary. Both are made by reflection from the Go types
// and from the tables job.Fields and job.Blocks, so that there is nothing to keep in step by hand.
package contract
