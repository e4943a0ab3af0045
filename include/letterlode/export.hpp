#pragma once
// LODE_API marks what a user of the shared libraries may call; all else is hidden.
#define LODE_API __attribute__((visibility("default")))
