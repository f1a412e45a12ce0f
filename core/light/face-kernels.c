/* face-kernels.c: which of the compiled kernels run on this machine */
#include "light/face-kernel.h"

/* face-kernel.c, compiled so many times. */
extern const SqFaceKernel sq_face_kernel_plain;
extern const SqQuickFaceKernel sq_quick_face_kernel_plain;
#ifdef SQ_HAVE_AVX2
extern const SqFaceKernel sq_face_kernel_avx2;
extern const SqQuickFaceKernel sq_quick_face_kernel_avx2;
#endif

static gboolean
has_avx2 (void)
{
#ifdef SQ_HAVE_AVX2
  return __builtin_cpu_supports ("avx2") != 0;
#else
  return FALSE;
#endif
}

const SqFaceKernel *
sq_face_kernel_of (guint i)
{
#ifdef SQ_HAVE_AVX2
  if (i == 1 && has_avx2 ())
    return &sq_face_kernel_avx2;
#endif
  return i == 0 ? &sq_face_kernel_plain : NULL;
}

const SqQuickFaceKernel *
sq_quick_face_kernel_of (guint i)
{
#ifdef SQ_HAVE_AVX2
  if (i == 1 && has_avx2 ())
    return &sq_quick_face_kernel_avx2;
#endif
  return i == 0 ? &sq_quick_face_kernel_plain : NULL;
}

const SqFaceKernel *
sq_face_kernel_best (void)
{
  return sq_face_kernel_of (has_avx2 () ? 1 : 0);
}

const SqQuickFaceKernel *
sq_quick_face_kernel_best (void)
{
  return sq_quick_face_kernel_of (has_avx2 () ? 1 : 0);
}
