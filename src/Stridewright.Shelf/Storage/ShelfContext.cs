using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;

namespace Stridewright.Shelf.Storage;

/// <summary>The shelf's tables. Nothing in them is particular to one database.</summary>
internal sealed class ShelfContext(DbContextOptions<ShelfContext> options) : DbContext(options)
{
    private const int IdLength = 32,
        WordLength = 32,
        MetreLength = 16;

    public DbSet<DocumentRow> Documents => Set<DocumentRow>();

    public DbSet<VersionRow> Versions => Set<VersionRow>();

    public DbSet<TagRow> Tags => Set<TagRow>();

    protected override void OnModelCreating(ModelBuilder modelBuilder)
    {
        modelBuilder.Entity<DocumentRow>(document =>
        {
            document.ToTable("Documents").HasKey(d => d.Id);
            document.Property(d => d.Id).HasMaxLength(IdLength);
            document.Property(d => d.Kind).HasMaxLength(WordLength);
            document.Property(d => d.Current).IsConcurrencyToken();
            document.HasIndex(d => d.Kind);
            document.HasMany(d => d.Versions).WithOne().HasForeignKey(v => v.DocumentId);
            document.HasMany(d => d.Tags).WithOne().HasForeignKey(t => t.DocumentId);
        });
        modelBuilder.Entity<VersionRow>(version =>
        {
            version.ToTable("Versions").HasKey(v => new { v.DocumentId, v.Number });
            version.HasIndex(v => v.Saved);
            version.Property(v => v.DocumentId).HasMaxLength(IdLength);
            version.Property(v => v.Title).HasMaxLength(DocumentLimits.Title);
            version.Property(v => v.Sought).HasMaxLength(DocumentLimits.Title);
            version.Property(v => v.Name).HasMaxLength(DocumentLimits.Title);
            version.Property(v => v.Sitting).HasMaxLength(IdLength);
            version.Property(v => v.Key).HasMaxLength(WordLength);
            version.Property(v => v.Metre).HasMaxLength(MetreLength);
        });
        modelBuilder.Entity<TagRow>(tag =>
        {
            tag.ToTable("Tags").HasKey(t => new { t.DocumentId, t.Sought });
            tag.Property(t => t.DocumentId).HasMaxLength(IdLength);
            tag.Property(t => t.Sought).HasMaxLength(DocumentLimits.Tag);
            tag.Property(t => t.Word).HasMaxLength(DocumentLimits.Tag);
            tag.HasIndex(t => t.Sought);
        });
    }
}

/// <summary>For dotnet-ef alone, which writes migrations with it.</summary>
internal sealed class ShelfContextFactory : IDesignTimeDbContextFactory<ShelfContext>
{
    public ShelfContext CreateDbContext(string[] args) =>
        new(new DbContextOptionsBuilder<ShelfContext>().UseSqlite("Data Source=:memory:").Options);
}
