// Compiled once for each kind of processor: foreach_target.h includes this file again and again (see
// Highway's quick_reference, "dynamic dispatch").
//
// A pair of codes is tested by a permutation of bytes: the first code, with the upper two bits of the second,
// picks one of 128 bytes, and the lower three bits of the second a bit in it. AVX-512 with VBMI picks from
// 128 bytes at once; the others pick four bytes by the first code, which serves all directions, and choose
// among them by the second.

#include "find/window_filter.hpp"

#include <algorithm>
#include <bit>

#define HWY_WANT_AVX3_DL 1
#undef HWY_TARGET_INCLUDE
#define HWY_TARGET_INCLUDE "find/window_filter.cpp"
#include <hwy/foreach_target.h>
#include <hwy/highway.h>

HWY_BEFORE_NAMESPACE();
namespace lode {
namespace HWY_NAMESPACE {

// The slots that were picked become ranks.
HWY_INLINE void rank_slots(const WindowBits& bits, Picked& picked) {
    for (std::size_t at = 0; at < picked.count; ++at) picked.rank[at] = bits.rank(picked.rank[at]);
}

// Looks up the windows that are marked along one axis: those whose first two codes and whose last two passed.
// The two in the middle are asked last, which costs less than asking them everywhere.
[[maybe_unused]] void look_up(const LetterCode* cells, std::size_t count, std::ptrdiff_t step,
                              const std::uint64_t* marks, const PairSet& middle, const WindowBits& bits,
                              Picked& picked) {
    picked.count = 0;
    for (std::size_t word = 0; word * 64 < count; ++word) {
        std::uint64_t left = marks[word];
        if (count - word * 64 < 64) left &= (std::uint64_t{1} << (count - word * 64)) - 1;
        for (; left != 0; left &= left - 1) {
            const std::size_t place = word * 64 + static_cast<std::size_t>(std::countr_zero(left));
            const LetterCode* const cell = cells + place;
            const std::uint32_t slot =
                bits.slot(cell[0] | std::uint32_t{cell[step]} << 5 | std::uint32_t{cell[2 * step]} << 10 |
                          (cell[3 * step] & bits.fourth) << 15);
            picked.place[picked.count] = static_cast<std::uint32_t>(place);
            picked.rank[picked.count] = slot;
            picked.count += bits.contains(slot) ? 1 : 0;
        }
    }
    std::size_t kept = 0;
    for (std::size_t at = 0; at < picked.count; ++at) {
        const LetterCode* const cell = cells + picked.place[at];
        picked.place[kept] = picked.place[at];
        picked.rank[kept] = picked.rank[at];
        kept += middle.contains(cell[step], cell[2 * step]) ? 1 : 0;
    }
    picked.count = kept;
    rank_slots(bits, picked);
}

// Letters whose codes are looked up by permutation; an alphabet with greater ones is read from its table.
[[maybe_unused]] constexpr std::size_t low_letters = 64;

void encode_plainly(const Letter* letters, std::size_t count, std::span<const LetterCode> code_of,
                    LetterCode* out) {
    for (std::size_t at = 0; at < count; ++at)
        out[at] = letters[at] < code_of.size() ? code_of[letters[at]] : LetterCode{0};
}

#if HWY_TARGET == HWY_SCALAR || HWY_TARGET == HWY_EMU128

constexpr std::string_view target_name = "plain";

void encode(const Letter* letters, std::size_t count, std::size_t, std::span<const LetterCode> code_of,
            LetterCode* out) {
    encode_plainly(letters, count, code_of, out);
}

void pick(const LetterCode* cells, std::size_t count, std::span<const std::ptrdiff_t> steps,
          const WindowFilter& filter, const WindowBits& bits, Picked* picked) {
    // The pairs by their first code, so that a test is one load and one shift.
    std::uint32_t first[code_count], third[code_count];
    for (std::size_t a = 0; a < code_count; ++a) {
        first[a] = third[a] = 0;
        for (std::size_t byte = 4; byte-- > 0;) {
            first[a] = first[a] << 8 | filter.first.bytes[byte * 32 + a];
            third[a] = third[a] << 8 | filter.third.bytes[byte * 32 + a];
        }
    }
    for (std::size_t axis = 0; axis < steps.size(); ++axis) {
        const std::ptrdiff_t step = steps[axis];
        std::uint64_t marks[picked_cells / 64];
        for (std::size_t word = 0; word * 64 < count; ++word) {
            const LetterCode* cell = cells + word * 64;
            marks[word] = 0;
            for (unsigned at = 0; at < 64; ++at, ++cell) {
                const std::uint32_t pass =
                    (first[cell[0]] >> cell[step]) & (third[cell[2 * step]] >> cell[3 * step]) & 1;
                marks[word] |= std::uint64_t{pass} << at;
            }
        }
        look_up(cells, count, step, marks, filter.second, bits, picked[axis]);
    }
}

#else

namespace hn = hwy::HWY_NAMESPACE;

#if HWY_TARGET == HWY_AVX3_DL

constexpr std::string_view target_name = "AVX-512 with VBMI";

void encode(const Letter* letters, std::size_t count, std::size_t readable,
            std::span<const LetterCode> code_of, LetterCode* out) {
    if (code_of.size() > low_letters) return encode_plainly(letters, count, code_of, out);
    alignas(64) LetterCode low[low_letters] = {};
    std::copy(code_of.begin(), code_of.end(), low);
    const __m512i table = _mm512_load_si512(low);
    std::size_t at = 0;
    for (; at < count && at + 32 <= readable; at += 32) {
        const __m256i narrow = _mm512_cvtusepi16_epi8(_mm512_loadu_si512(letters + at));
        const __mmask32 is_low = _mm256_cmplt_epu8_mask(narrow, _mm256_set1_epi8(low_letters));
        _mm256_storeu_si256(reinterpret_cast<__m256i*>(out + at),
                            _mm512_castsi512_si256(_mm512_maskz_permutexvar_epi8(
                                is_low, _mm512_castsi256_si512(narrow), table)));
    }
    if (at < count) encode_plainly(letters + at, count - at, code_of, out + at);
}

struct PairTest {
    __m512i low, high;
    explicit PairTest(const PairSet& pairs)
        : low(_mm512_loadu_si512(pairs.bytes)), high(_mm512_loadu_si512(pairs.bytes + 64)) {}
    HWY_INLINE __mmask64 operator()(__m512i a, __m512i b) const {
        const __m512i upper = _mm512_slli_epi16(_mm512_and_si512(b, _mm512_set1_epi8(24)), 2);
        const __m512i bytes = _mm512_permutex2var_epi8(low, _mm512_or_si512(upper, a), high);
        const __m512i bits = _mm512_shuffle_epi8(_mm512_set4_epi32(static_cast<int>(0x80402010), 0x08040201,
                                                                   static_cast<int>(0x80402010), 0x08040201),
                                                 b);
        return _mm512_test_epi8_mask(bytes, bits);
    }
};

// The letters of windows that passed, and where they begin, one after another.
struct Passed {
    alignas(64) LetterCode letter[4][picked_cells + 64];
    alignas(64) std::uint16_t place[picked_cells + 64];
};

void pass(const LetterCode* cells, std::size_t words, std::ptrdiff_t step, const std::uint64_t* marks,
          Passed& passed) {
    alignas(64) static constexpr std::uint8_t counting[64] = {
        0,  1,  2,  3,  4,  5,  6,  7,  8,  9,  10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 21,
        22, 23, 24, 25, 26, 27, 28, 29, 30, 31, 32, 33, 34, 35, 36, 37, 38, 39, 40, 41, 42, 43,
        44, 45, 46, 47, 48, 49, 50, 51, 52, 53, 54, 55, 56, 57, 58, 59, 60, 61, 62, 63};
    const __m512i own_place = _mm512_load_si512(counting);
    std::size_t count = 0;
    for (std::size_t word = 0; word < words; ++word) {
        const __mmask64 mask = marks[word];
        const LetterCode* const cell = cells + word * 64;
        for (std::ptrdiff_t letter = 0; letter < 4; ++letter)
            _mm512_storeu_si512(passed.letter[letter] + count,
                                _mm512_maskz_compress_epi8(mask, _mm512_loadu_si512(cell + letter * step)));
        const __m512i place = _mm512_maskz_compress_epi8(mask, own_place);
        const __m512i before = _mm512_set1_epi16(static_cast<short>(word * 64));
        _mm512_storeu_si512(passed.place + count,
                            _mm512_add_epi16(before, _mm512_cvtepu8_epi16(_mm512_castsi512_si256(place))));
        _mm512_storeu_si512(
            passed.place + count + 32,
            _mm512_add_epi16(before, _mm512_cvtepu8_epi16(_mm512_extracti64x4_epi64(place, 1))));
        count += static_cast<std::size_t>(std::popcount(mask));
    }
}

// Sixteen windows at a time.
void look_up_passed(const Passed& passed, std::size_t count, const WindowBits& bits, Picked& picked) {
    const __m512i fourth = _mm512_set1_epi32(static_cast<int>(bits.fourth));
    const __m512i multiplier = _mm512_set1_epi32(static_cast<int>(bits.multiplier));
    picked.count = 0;
    for (std::size_t at = 0; at < count; at += 16) {
        const auto letter = [&](std::size_t which) {
            return _mm512_cvtepu8_epi32(
                _mm_load_si128(reinterpret_cast<const __m128i*>(passed.letter[which] + at)));
        };
        const __m512i front = _mm512_or_si512(letter(0), _mm512_slli_epi32(letter(1), 5));
        const __m512i back =
            _mm512_or_si512(letter(2), _mm512_slli_epi32(_mm512_and_si512(letter(3), fourth), 5));
        const __m512i window = _mm512_or_si512(front, _mm512_slli_epi32(back, 10));
        const __m512i slot = _mm512_srli_epi32(_mm512_mullo_epi32(window, multiplier), bits.shift);
        const __m512i around = _mm512_i32gather_epi32(_mm512_srli_epi32(slot, 5), bits.bits, 4);
        const __m512i bit =
            _mm512_sllv_epi32(_mm512_set1_epi32(1), _mm512_and_si512(slot, _mm512_set1_epi32(31)));
        __mmask16 mask = _mm512_test_epi32_mask(around, bit);
        if (count - at < 16) mask &= static_cast<__mmask16>((1u << (count - at)) - 1);
        const __m512i place =
            _mm512_cvtepu16_epi32(_mm256_load_si256(reinterpret_cast<const __m256i*>(passed.place + at)));
        _mm512_storeu_si512(picked.place + picked.count, _mm512_maskz_compress_epi32(mask, place));
        _mm512_storeu_si512(picked.rank + picked.count, _mm512_maskz_compress_epi32(mask, slot));
        picked.count += static_cast<std::size_t>(std::popcount(static_cast<unsigned>(mask)));
    }
    rank_slots(bits, picked);
}

void pick(const LetterCode* cells, std::size_t count, std::span<const std::ptrdiff_t> steps,
          const WindowFilter& filter, const WindowBits& bits, Picked* picked) {
    const PairTest first(filter.first), second(filter.second), third(filter.third);
    const std::size_t words = (count + 63) / 64;
    std::uint64_t marks[4][picked_cells / 64];
    std::size_t marked[4] = {};
    for (std::size_t word = 0; word < words; ++word) {
        const LetterCode* const cell = cells + word * 64;
        const __m512i a = _mm512_loadu_si512(cell);
        const std::uint64_t here =
            count - word * 64 < 64 ? (std::uint64_t{1} << (count - word * 64)) - 1 : ~std::uint64_t{0};
        for (std::size_t axis = 0; axis < steps.size(); ++axis) {
            const std::ptrdiff_t step = steps[axis];
            const __m512i b = _mm512_loadu_si512(cell + step), c = _mm512_loadu_si512(cell + 2 * step);
            const std::uint64_t mask =
                here & first(a, b) & second(b, c) & third(c, _mm512_loadu_si512(cell + 3 * step));
            marks[axis][word] = mask;
            marked[axis] += static_cast<std::size_t>(std::popcount(mask));
        }
    }
    for (std::size_t axis = 0; axis < steps.size(); ++axis) {
        // Few are looked up one by one.
        if (marked[axis] < 2 * words) {
            look_up(cells, count, steps[axis], marks[axis], filter.second, bits, picked[axis]);
            continue;
        }
        Passed passed;
        pass(cells, words, steps[axis], marks[axis], passed);
        look_up_passed(passed, marked[axis], bits, picked[axis]);
    }
}

#else

#if HWY_TARGET == HWY_AVX3
constexpr std::string_view target_name = "AVX-512";
#elif HWY_TARGET == HWY_AVX2
constexpr std::string_view target_name = "AVX2";
#elif HWY_TARGET == HWY_SSE4
constexpr std::string_view target_name = "SSE4";
#elif HWY_TARGET == HWY_SSSE3
constexpr std::string_view target_name = "SSSE3";
#else
constexpr std::string_view target_name = "vectors";
#endif

using Bytes = hn::CappedTag<std::uint8_t, 64>;
using Vector = hn::Vec<Bytes>;

void encode(const Letter* letters, std::size_t count, std::size_t readable,
            std::span<const LetterCode> code_of, LetterCode* out) {
    if (code_of.size() > low_letters) return encode_plainly(letters, count, code_of, out);
    const Bytes bytes;
    const hn::Repartition<std::uint16_t, Bytes> wide;
    const hn::RebindToSigned<decltype(wide)> wide_signed;
    const hn::Half<Bytes> half;
    alignas(64) LetterCode low[low_letters] = {};
    std::copy(code_of.begin(), code_of.end(), low);
    const std::size_t step = hn::Lanes(bytes);
    const std::size_t tables = (code_of.size() + 15) / 16;
    const auto narrowed = [&](const Letter* from) {
        return hn::DemoteTo(half,
                            hn::BitCast(wide_signed, hn::Min(hn::LoadU(wide, from), hn::Set(wide, 255))));
    };
    std::size_t at = 0;
    for (; at < count && at + step <= readable; at += step) {
        const auto letter = hn::Combine(bytes, narrowed(letters + at + step / 2), narrowed(letters + at));
        const auto lower = hn::And(letter, hn::Set(bytes, 15));
        const auto upper = hn::And(letter, hn::Set(bytes, 0xF0));
        auto code = hn::Zero(bytes);
        for (std::size_t table = 0; table < tables; ++table) {
            const auto is_here = hn::Eq(upper, hn::Set(bytes, static_cast<std::uint8_t>(table * 16)));
            code = hn::IfThenElse(is_here,
                                  hn::TableLookupBytes(hn::LoadDup128(bytes, low + table * 16), lower), code);
        }
        hn::StoreU(code, bytes, out + at);
    }
    if (at < count) encode_plainly(letters + at, count - at, code_of, out + at);
}

HWY_INLINE Vector looked_up(const std::uint8_t* sixteen, Vector lower) {
    return hn::TableLookupBytes(hn::LoadDup128(Bytes(), sixteen), lower);
}

// Of the pairs that begin with a code, the four bytes.
struct PairRow {
    Vector bytes[4];
    HWY_INLINE PairRow(const PairSet& pairs, Vector a) {
        const Bytes d;
        const auto lower = hn::And(a, hn::Set(d, 15));
        const auto is_upper = hn::TestBit(a, hn::Set(d, 16));
        for (std::size_t byte = 0; byte < 4; ++byte)
            bytes[byte] = hn::IfThenElse(is_upper, looked_up(pairs.bytes + byte * 32 + 16, lower),
                                         looked_up(pairs.bytes + byte * 32, lower));
    }
    HWY_INLINE hn::Mask<Bytes> contains(Vector b) const {
        alignas(16) static constexpr std::uint8_t bit_of[16] = {1, 2, 4, 8, 16, 32, 64, 128,
                                                                1, 2, 4, 8, 16, 32, 64, 128};
        const Bytes d;
        const auto by_8 = hn::TestBit(b, hn::Set(d, 8));
        const auto by_16 = hn::TestBit(b, hn::Set(d, 16));
        const auto byte = hn::IfThenElse(by_16, hn::IfThenElse(by_8, bytes[3], bytes[2]),
                                         hn::IfThenElse(by_8, bytes[1], bytes[0]));
        return hn::TestBit(byte, looked_up(bit_of, hn::And(b, hn::Set(d, 15))));
    }
};

void pick(const LetterCode* cells, std::size_t count, std::span<const std::ptrdiff_t> steps,
          const WindowFilter& filter, const WindowBits& bits, Picked* picked) {
    const Bytes d;
    const std::size_t lanes = hn::Lanes(d);
    std::uint64_t marks[4][picked_cells / 64] = {};
    for (std::size_t at = 0; at < count; at += lanes) {
        const LetterCode* const cell = cells + at;
        const PairRow row(filter.first, hn::LoadU(d, cell));
        for (std::size_t axis = 0; axis < steps.size(); ++axis) {
            const std::ptrdiff_t step = steps[axis];
            auto passed = row.contains(hn::LoadU(d, cell + step));
            if (hn::AllFalse(d, passed)) continue;
            const PairRow third(filter.third, hn::LoadU(d, cell + 2 * step));
            passed = hn::And(passed, third.contains(hn::LoadU(d, cell + 3 * step)));
            std::uint8_t mask[8] = {};
            hn::StoreMaskBits(d, passed, mask);
            std::uint64_t word = 0;
            for (std::size_t byte = 0; byte < lanes / 8; ++byte)
                word |= std::uint64_t{mask[byte]} << 8 * byte;
            marks[axis][at / 64] |= word << at % 64;
        }
    }
    for (std::size_t axis = 0; axis < steps.size(); ++axis)
        look_up(cells, count, steps[axis], marks[axis], filter.second, bits, picked[axis]);
}

#endif
#endif

const FindLoops* loops() {
    static constexpr FindLoops these{target_name, encode, pick};
    return &these;
}

}  // namespace HWY_NAMESPACE
}  // namespace lode
HWY_AFTER_NAMESPACE();

#if HWY_ONCE
namespace lode {
namespace {

// Highway's library knows the processor as well, but measures its clock whenever a program starts that links
// it, for 3 milliseconds. What is asked here is all that may stand in code of the kind and is in such loops.
bool runs_here([[maybe_unused]] std::int64_t target) {
#if HWY_ARCH_X86
    __builtin_cpu_init();
    const bool ssse3 = __builtin_cpu_supports("ssse3");
    const bool sse4 = ssse3 && __builtin_cpu_supports("sse4.1") && __builtin_cpu_supports("sse4.2") &&
                      __builtin_cpu_supports("pclmul") && __builtin_cpu_supports("aes");
    const bool avx2 = sse4 && __builtin_cpu_supports("avx") && __builtin_cpu_supports("avx2") &&
                      __builtin_cpu_supports("bmi") && __builtin_cpu_supports("bmi2") &&
                      __builtin_cpu_supports("fma");
    const bool avx3 = avx2 && __builtin_cpu_supports("avx512f") && __builtin_cpu_supports("avx512vl") &&
                      __builtin_cpu_supports("avx512dq") && __builtin_cpu_supports("avx512bw");
    switch (target) {
        case HWY_AVX3_DL:
            return avx3 && __builtin_cpu_supports("avx512vnni") && __builtin_cpu_supports("vpclmulqdq") &&
                   __builtin_cpu_supports("avx512vbmi") && __builtin_cpu_supports("avx512vbmi2") &&
                   __builtin_cpu_supports("avx512vpopcntdq") && __builtin_cpu_supports("avx512bitalg");
        case HWY_AVX3:
            return avx3;
        case HWY_AVX2:
            return avx2;
        case HWY_SSE4:
            return sse4;
        case HWY_SSSE3:
            return ssse3;
        default:
            return false;
    }
#else
    return target == HWY_STATIC_TARGET;
#endif
}

}  // namespace

std::vector<const FindLoops*> every_find_loops() {
    struct Kind {
        std::int64_t target;
        const FindLoops* (*loops)();  // none where they were not compiled
    };
    constexpr Kind kinds[] = {
#if HWY_ARCH_X86
        {HWY_AVX3_DL, HWY_CHOOSE_AVX3_DL(loops)}, {HWY_AVX3, HWY_CHOOSE_AVX3(loops)},
        {HWY_AVX2, HWY_CHOOSE_AVX2(loops)},       {HWY_SSE4, HWY_CHOOSE_SSE4(loops)},
        {HWY_SSSE3, HWY_CHOOSE_SSSE3(loops)},
#else
        {HWY_STATIC_TARGET, &HWY_STATIC_DISPATCH(loops)},
#endif
    };
    std::vector<const FindLoops*> every;
    for (const Kind& kind : kinds)
        if (kind.loops && runs_here(kind.target)) every.push_back(kind.loops());
    every.push_back((HWY_CHOOSE_FALLBACK(loops))());
    return every;
}

const FindLoops& find_loops() {
    static const FindLoops& best = *every_find_loops().front();
    return best;
}

}  // namespace lode
#endif
