"""What bed.py uses of letterlode, through ctypes."""
import ctypes

# Result, name and parameters of each function used, as letterlode.h declares them; a handle is a pointer to anything.
DECLARED = """
text lode_version
text lode_direction_name int
text lode_error_message handle
text lode_error_source handle
int lode_error_line handle
int lode_error_position handle
text lode_error_word handle size
none lode_error_free handle
int lode_recipe_create handle* handle*
int lode_recipe_set_words_text handle text text handle*
int lode_recipe_set_grid handle int int handle*
none lode_recipe_free handle
int lode_make handle* handle* handle handle handle*
text lode_refusal_message handle
size lode_refusal_advice_count handle
text lode_refusal_advice handle size
none lode_refusal_free handle
int lode_puzzle_rows handle
int lode_puzzle_columns handle
text lode_puzzle_cell handle int int
size lode_puzzle_word_count handle
text lode_puzzle_word handle size
int lode_puzzle_placement int* int* int* handle size handle*
none lode_puzzle_free handle
int lode_audit_puzzle handle* handle handle*
int lode_audit_grid_text handle* text text handle handle*
int lode_judge_create handle* handle handle*
none lode_judge_free handle
int lode_audit_is_certified handle
size lode_audit_word_count handle
text lode_audit_word handle size
size lode_audit_copy_count handle size
none lode_audit_free handle
int lode_rate_puzzle handle* handle handle*
double lode_rating_fixations handle
text lode_rating_level handle
size lode_rating_part_count handle int
text lode_rating_part handle int size
double lode_rating_part_value handle int size
text lode_rating_part_unit handle int size
none lode_rating_free handle
"""
DIFFICULTY = 1  # LODE_DIFFICULTY
TYPES = {"none": None, "int": ctypes.c_int32, "size": ctypes.c_size_t, "double": ctypes.c_double, "text": ctypes.c_char_p,
         "handle": ctypes.c_void_p, "int*": ctypes.POINTER(ctypes.c_int32), "handle*": ctypes.POINTER(ctypes.c_void_p)}
library = ctypes.CDLL("libletterlode.so.0.1")  # with the version of the interface that this was written for
for result, name, *parameters in map(str.split, DECLARED.strip().splitlines()):
    function = getattr(library, name)
    function.restype, function.argtypes = TYPES[result], [TYPES[parameter] for parameter in parameters]


class Error(Exception):
    """What a call that failed has to say: where, about which word, and why."""

    def __init__(self, error):
        super().__init__(library.lode_error_message(error).decode())
        self.source, self.line = library.lode_error_source(error).decode(), library.lode_error_line(error)
        self.position = library.lode_error_position(error)
        self.word = (library.lode_error_word(error, 0) or b"").decode()


class Handle(ctypes.c_void_p):
    """A recipe, puzzle, refusal, audit, judge, rating or error, freed when Python lets go of it."""

    def __init__(self, kind):
        super().__init__()
        self.free = getattr(library, f"lode_{kind}_free")

    def __del__(self):
        self.free(self)


def call(function, *arguments):
    """Calls what takes an error last; raises that."""
    error = Handle("error")
    function(*arguments, error)
    if error:
        raise Error(error)


def made(kind, function, *arguments):
    """What a call hands out through its first parameter."""
    handle = Handle(kind)
    call(function, handle, *arguments)
    return handle
